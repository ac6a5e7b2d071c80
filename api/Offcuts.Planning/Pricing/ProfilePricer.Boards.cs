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
        OpenRips(mostFirst);
        leaders = [.. SectionItems(second)];
        boardKnapsack.Solve(leaders, view.FirstCapacity(mostFirst), trace: false);
        boardSteps = Steps(boardKnapsack.Best);
    }

    /// <summary>The best value of any pattern of the board (an upper bound where needs couple its sections).</summary>
    public double BestValue(BoardType board) => Best(view.FirstOf(board)).Value;

    private (double Value, int At, bool Strips) Best(long first)
    {
        var capacity = view.FirstCapacity(first);
        var best = (Value: 0.0, At: 0, Strips: false);
        foreach (var (at, sections) in boardSteps)
        {
            if (at > capacity)
            {
                break;
            }

            var (restValue, strips) = BoardRest(first + view.Kerf - (at * view.FirstCell));
            if ((!all || at > 0 || strips) && sections + restValue > best.Value)
            {
                best = (sections + restValue, at, strips);
            }
        }

        return best;
    }

    private (double Value, bool Strips) BoardRest(long rest)
    {
        if (rest <= view.Kerf)
        {
            return (0, false);
        }

        var best = prices.WorthWeight > 0 ? WorthOf(rest - view.Kerf, openSecond) : 0;
        var filled = !view.RipFirst || fills.Length == 0 ? 0 : all ? openRest!.Value(rest, openSecond) : openMix!.Value(rest);
        return filled > best ? (filled, true) : (best, false);
    }

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
