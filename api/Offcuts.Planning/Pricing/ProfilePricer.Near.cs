using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <content>Lists all patterns that are nearly the best.</content>
/// <remarks>
/// What a part of a pattern lacks to the best that its room could hold, the whole pattern lacks to the best of its board, because
/// the knapsacks could put that best in its place. So whatever lacks more than the slack is left out at once, on every level. Of
/// choices that make the same only the one that takes least room is kept, and one that makes no more than another of the same room is
/// left out: more than is needed does no harm where needs are lower limits. What is made beyond the need counts for nothing.
/// </remarks>
internal sealed partial class ProfilePricer
{
    private readonly Dictionary<(int Width, int Room), (double Least, List<NearChoice> Choices)> nearRuns = [];

    /// <summary>With more choices for one room than this, memory runs out before patience does.</summary>
    private const int MostChoices = 100_000;
    private ListingEffort effort = null!;

    /// <summary>
    /// Patterns of the board with at least the given value that between them make all that any such pattern makes; null if they are
    /// too many, or if strips of free width are asked for, which are without number. Prices must give leftovers no worth. Call after <see cref="Open"/>.
    /// </summary>
    /// <param name="board">The board.</param>
    /// <param name="least">Least value.</param>
    /// <param name="mostEffort">How much work it may be.</param>
    public List<NearChoice>? Near(BoardType board, double least, ListingEffort mostEffort)
    {
        if (Array.Exists(fills, fill => !fill.IsWorthless))
        {
            return null;
        }

        if (BestValue(board) < least)
        {
            return [];
        }

        var capacity = view.FirstCapacity(view.FirstOf(board));
        nearRuns.Clear();
        effort = mostEffort;

        // Of two sections that make the same, the shorter serves wherever the longer does.
        var sections = leaders.Where(leader => leader.Size <= capacity)
            .SelectMany(leader => NearSections(leader.Tag, least - boardKnapsack.Best[capacity - leader.Size]))
            .OrderBy(section => section.Size).DistinctBy(section => section.Made.Key, StringComparer.Ordinal).ToList();
        var found = Choices(sections, Nothing, capacity, least);
        return effort.IsSpent ? null : found;
    }

    private NearChoice Nothing => new(Made.Nothing(prices.Need.Length), 0, 0, null, null);

    /// <summary>The sections of a leader that are worth at least so much.</summary>
    private IEnumerable<NearItem> NearSections(int leader, double least)
    {
        if (contents[leader].Value < least - Rounding)
        {
            return [];
        }

        var section = view.FirstCells[leader];
        var steps = across[Array.BinarySearch(sectionCells, section)];
        var start = Nothing with { Made = One(leader), Value = Value(One(leader)) };
        var room = view.SecondCapacity(openSecond) - view.SecondCells[leader];
        var bands = BandItems(section).Where(band => band.Size <= room)
            .SelectMany(band => NearBands(band.Tag, section, least - start.Value - StepAt(steps, room - band.Size))).ToList();
        return Choices(bands, start, room, least)
            .Select(choice => new NearItem(section, choice.Made, leader, choice));
    }

    /// <summary>The bands of a section with a given blank that are worth at least so much.</summary>
    private IEnumerable<NearItem> NearBands(int blank, int section, double least) =>
        NearRuns(blank, section - view.FirstCells[blank], least - value[blank])
            .Select(run => new NearItem(view.SecondCells[blank], run.Made.And(One(blank), prices.Need), blank, run));

    /// <summary>The runs beside a blank that are worth at least so much.</summary>
    private IEnumerable<NearChoice> NearRuns(int blank, int room, double least)
    {
        if (run.Length == 0 || room <= 0)
        {
            return least <= Rounding ? [Nothing] : [];
        }

        var width = Array.BinarySearch(runWidths, view.SecondCells[blank]);
        if (!nearRuns.TryGetValue((width, room), out var known) || known.Least > least)
        {
            var items = RunItems(runWidths[width]).Where(item => item.Size <= room).Select(item => new NearItem(item.Size, One(item.Tag), item.Tag, null)).ToList();
            known = (least, Choices(items, Nothing, room, least));
            nearRuns[(width, room)] = known;
        }

        return known.Choices.Where(choice => choice.Value >= least - Rounding);
    }

    /// <summary>All choices of items, each as often as wanted, that are worth at least so much, less those that make no more than another.</summary>
    private List<NearChoice> Choices(List<NearItem> items, NearChoice start, int room, double least)
    {
        var search = new NearSearch(items.ConvertAll(item => (item, Value(item.Made))), prices, room, least - Rounding, MostChoices, effort);
        return Made.Undominated(search.From(start), choice => choice.Made, effort);
    }

    private Made One(int blank)
    {
        var made = Made.Nothing(prices.Need.Length);
        made.Counts[view.Blanks[blank].Row] = (int)Math.Min(view.Blanks[blank].Yield, prices.Need[view.Blanks[blank].Row]);
        return made;
    }

    private double Value(Made made)
    {
        var sum = 0.0;
        for (var row = 0; row < made.Counts.Length; row++)
        {
            sum += prices.Piece[row] * made.Counts[row];
        }

        return sum;
    }

    private static double StepAt((int At, double Value)[] steps, int capacity)
    {
        var (low, high) = (0, steps.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = steps[middle].At <= capacity ? (middle, high) : (low, middle - 1);
        }

        return steps[low].Value;
    }

    /// <summary>The sections of a pattern that was listed.</summary>
    public List<Section> SectionsOf(NearChoice pattern)
    {
        var need = Limits(proper: true);
        var sections = new List<Section>();
        foreach (var section in pattern.Items())
        {
            var bands = new List<Band>();
            AddNear(bands, [section.Tag], need);
            foreach (var band in section.Inside!.Items())
            {
                AddNear(bands, [band.Tag, .. band.Inside!.Items().Select(blank => blank.Tag)], need);
            }

            AddIfAny(sections, view.First[section.Tag], bands);
        }

        return sections;
    }

    private void AddNear(List<Band> bands, IEnumerable<int> tags, long[] need)
    {
        var blanks = new List<BlankOption>();
        foreach (var blank in tags)
        {
            Take(view.Blanks[blank], blanks, need);
        }

        if (blanks.Count > 0)
        {
            bands.Add(new Band(blanks.Max(item => view.RipFirst ? item.Along : item.Across), blanks, null));
        }
    }
}
