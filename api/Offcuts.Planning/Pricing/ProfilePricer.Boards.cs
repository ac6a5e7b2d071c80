using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <content>The outer knapsack: sections into boards.</content>
internal sealed partial class ProfilePricer
{
    // Leaders of sections: blanks by their index, then families (when crosscutting first) from value.Length on.
    private Content[] contents = [];
    private List<KnapsackItem> leaders = [];
    private long openSecond = -1;
    private (int At, double Value)[] boardSteps = [];

    /// <summary>Solves the outer knapsack for all boards with one second extent and first extents up to the one given.</summary>
    public void Open(long second, long mostFirst)
    {
        openSecond = second;
        leaders = [.. SectionItems(second)];
        boardKnapsack.Solve(leaders, view.FirstCapacity(mostFirst), trace: false);
        boardSteps = Steps(boardKnapsack.Best);
    }

    /// <summary>The best value of any pattern of the board (an upper bound where needs couple its sections).</summary>
    public double BestValue(BoardType board) => Best(view.FirstOf(board)).Value;

    private (double Value, int At, int Family) Best(long first)
    {
        var capacity = view.FirstCapacity(first);
        var best = (Value: 0.0, At: 0, Family: -1);
        foreach (var (at, sections) in boardSteps)
        {
            if (at > capacity)
            {
                break;
            }

            var (restValue, family) = BoardRest(first + view.Kerf - (at * view.FirstCell));
            if ((!all || at > 0 || family >= 0) && sections + restValue > best.Value)
            {
                best = (sections + restValue, at, family);
            }
        }

        return best;
    }

    private (double Value, int Family) BoardRest(long rest)
    {
        var (best, family) = (0.0, -1);
        if (rest <= view.Kerf)
        {
            return (best, family);
        }

        if (prices.WorthWeight > 0)
        {
            best = WorthOf(rest - view.Kerf, openSecond);
        }

        for (var f = 0; view.RipFirst && f < fills.Length; f++)
        {
            var times = PiecesInRow(f);
            if (all && times > 0 && rests[f] is { } strips && strips.Value(rest, openSecond, times) is var with && with > best)
            {
                (best, family) = (with, f);
            }
            else if (!all && times > 0 && !fills[f].IsWorthless)
            {
                var filled = fills[f].Value(rest, times, out var count) - (count * times * cutWeight);
                if (count > 0 && filled > best)
                {
                    (best, family) = (filled, f);
                }
            }
        }

        return (best, family);
    }

    /// <summary>How many strips of a family lie end to end in a rip of the open length.</summary>
    private int PiecesInRow(int family) =>
        (int)((openSecond + view.Kerf) / (view.Profile.Families[family].Along + view.Kerf));

    private IEnumerable<KnapsackItem> SectionItems(long second)
    {
        contents = new Content[value.Length + fills.Length];
        for (var i = 0; i < value.Length; i++)
        {
            if (value[i] <= 0 || view.Second[i] > second)
            {
                continue;
            }

            contents[i] = BestContent(view.FirstCells[i], view.First[i], second, view.SecondCells[i], value[i] - cutWeight, stripsRequired: false, i);
            yield return new KnapsackItem(view.FirstCells[i], contents[i].Value, Copies(i), i);
            if (all && WithoutLeader(view.FirstCells[i], second) is > 0 and var without)
            {
                yield return new KnapsackItem(view.FirstCells[i], without, MostSections, i);
            }
        }

        for (var f = 0; !view.RipFirst && f < fills.Length; f++)
        {
            if (fills[f].IsWorthless)
            {
                continue;
            }

            var content = BestContent(view.FamilyFirstCells[f], view.Profile.Families[f].Along, second, 0, -cutWeight, stripsRequired: true);
            if (content.Value > 0)
            {
                contents[value.Length + f] = content;
                yield return new KnapsackItem(view.FamilyFirstCells[f], content.Value, fills[f].MostStrips, value.Length + f);
                if (all && WithoutLeader(view.FamilyFirstCells[f], second) is > 0 and var without)
                {
                    yield return new KnapsackItem(view.FamilyFirstCells[f], without, MostSections, value.Length + f);
                }
            }
        }
    }
}
