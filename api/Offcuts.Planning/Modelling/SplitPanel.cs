namespace Offcuts.Planning.Modelling;

/// <summary>
/// The sub-panels of one copy of a panel, which share out its width as suits the wood. Each counts for what its strips reach, but no more than the
/// planer takes; all together must reach what the panel needs with its seams. Widths are in ticks.
/// </summary>
/// <param name="rows">A row for each sub-panel.</param>
internal sealed class SplitPanel(IReadOnlyList<StripRow> rows)
{
    private readonly long needed = rows.Sum(row => row.Needed);

    /// <summary>A row for each sub-panel. What is needed of them (<see cref="DemandRow.Needed"/>) is where to start from: equal shares.</summary>
    public IReadOnlyList<StripRow> Rows => rows;

    /// <summary>The panels that are glued up from more than one sub-panel.</summary>
    public static List<SplitPanel> Of(IEnumerable<DemandRow> rows) => [.. rows.OfType<StripRow>()
        .GroupBy(row => (row.Family, row.Copy)).Where(panel => panel.Count() > 1).Select(panel => new SplitPanel([.. panel]))];

    /// <summary>
    /// Shares out what is still needed, so that in the end the sub-panels are as equal as they can be. A sub-panel that lacks less than a strip is
    /// left as it is if the others can take that over.
    /// </summary>
    /// <param name="made">What the strips of every row reach.</param>
    /// <param name="need">What is still needed of every row; those of the sub-panels are set.</param>
    public void ShareOut(long[] made, long[] need)
    {
        var lacking = needed - rows.Sum(row => Counted(row, made));
        var open = rows.OrderBy(row => made[row.Index]).ThenBy(row => row.Index).ToList();
        while (open.Count > 1 && lacking > 0 && made[open[^1].Index] > 0
            && Level(open, made, lacking) - made[open[^1].Index] < open[^1].Narrowest.Ticks
            && open.SkipLast(1).Sum(row => row.Room(made)) >= lacking)
        {
            open.RemoveAt(open.Count - 1);
        }

        foreach (var row in rows)
        {
            need[row.Index] = 0;
        }

        var level = lacking > 0 ? Level(open, made, lacking) : 0;
        foreach (var row in open.Where(row => lacking > 0 && level > made[row.Index]))
        {
            need[row.Index] = Math.Min(Math.Min(level - made[row.Index], row.Room(made)), lacking);
            lacking -= need[row.Index];
        }
    }

    /// <summary>By how much the strips of a row could be narrower, all others staying as they are; less than nothing if they are too narrow.</summary>
    /// <param name="row">Index of the row.</param>
    /// <param name="made">What the strips of every row reach.</param>
    public long Spare(int row, long[] made) =>
        made[row] - Math.Max(0, needed - rows.Where(other => other.Index != row).Sum(other => Counted(other, made)));

    /// <summary>How wide each sub-panel is to be, as equal as its strips and the planer let them: together just what is needed.</summary>
    /// <param name="reach">What the strips of each sub-panel reach, in the order of the rows.</param>
    public long[] Widths(IReadOnlyList<long> reach)
    {
        var most = rows.Select((row, at) => Math.Min(reach[at], row.Most.Ticks)).ToArray();
        var widths = new long[most.Length];
        var (left, open) = (needed, most.Length);
        foreach (var at in Enumerable.Range(0, most.Length).OrderBy(at => most[at]).ThenBy(at => at))
        {
            widths[at] = Math.Min(most[at], (left + open - 1) / open);
            left -= widths[at];
            open--;
        }

        return widths;
    }

    private static long Counted(StripRow row, long[] made) => Math.Min(made[row.Index], row.Most.Ticks);

    /// <summary>How wide the narrowest of some sub-panels would be if what is lacking went to the narrowest first; they are in ascending order.</summary>
    private static long Level(List<StripRow> open, long[] made, long lacking)
    {
        var (sum, level) = (lacking, 0L);
        for (var count = 1; count <= open.Count; count++)
        {
            sum += made[open[count - 1].Index];
            level = (sum + count - 1) / count;
            if (count == open.Count || level <= made[open[count].Index])
            {
                break;
            }
        }

        return level;
    }
}
