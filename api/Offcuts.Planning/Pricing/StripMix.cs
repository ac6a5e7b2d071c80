namespace Offcuts.Planning.Pricing;

/// <summary>
/// The best use of a free extent for strips of several panels side by side. Each panel's strips take an extent of their own:
/// <code>
/// value(R) = max { sum_p fill_p(R_p) : sum_p R_p &lt;= R }
/// </code>
/// For a number of strips of each panel, fill_p is concave and linear in parts, so that in a best choice all panels but one stand where a part begins or ends
/// (<see cref="StripFill.Breaks"/>), and that one has what is left. The sums of the others are kept by extent and value; where they are too many,
/// extents are rounded down to a grid, which leaves an upper bound.
/// </summary>
internal sealed class StripMix
{
    /// <summary>With more sums than this they are rounded to a grid of so many steps.</summary>
    private const int MostSums = 1_000;
    private readonly List<(int Family, StripFill Fill, int Times)> panels;
    private readonly double cutWeight;
    private readonly List<List<Sum>> others = [];
    private readonly Dictionary<long, (double Value, int Last, Sum Others)> known = [];

    /// <param name="panels">The families, by their number, with how many strips lie end to end in a rip.</param>
    /// <param name="cutWeight">What each strip's cut takes off.</param>
    /// <param name="mostFree">The largest free extent to come, with one kerf.</param>
    public StripMix(IEnumerable<(int Family, StripFill Fill, int Times)> panels, double cutWeight, long mostFree)
    {
        this.panels = [.. panels.Where(panel => panel.Times > 0 && !panel.Fill.IsWorthless)];
        this.cutWeight = cutWeight;
        for (var last = 0; last < this.panels.Count; last++)
        {
            others.Add(this.panels.Count == 1 ? [Sum.None] : SumsBeside(last, mostFree));
        }
    }

    /// <summary>The best value; nothing where no strip fits or is worth its cut.</summary>
    /// <param name="free">The free extent with one kerf, in ticks.</param>
    public double Value(long free) => Best(free).Value;

    /// <summary>The families of a best choice with the extents that they may take, the one that takes what is left last.</summary>
    /// <inheritdoc cref="Value"/>
    public IEnumerable<(int Family, int Times, long Extent)> Choose(long free)
    {
        var (_, last, sum) = Best(free);
        for (var each = sum; each.Before is not null; each = each.Before)
        {
            var panel = panels[each.Panel];
            yield return (panel.Family, panel.Times, each.Taken);
            free -= each.Taken;
        }

        if (last >= 0)
        {
            yield return (panels[last].Family, panels[last].Times, free);
        }
    }

    private (double Value, int Last, Sum Others) Best(long free)
    {
        if (known.TryGetValue(free, out var best))
        {
            return best;
        }

        best = (0, -1, Sum.None);
        for (var last = 0; last < panels.Count; last++)
        {
            foreach (var sum in others[last])
            {
                if (sum.Extent > free)
                {
                    break;
                }

                var value = sum.Value + Fill(last, free - sum.Extent);
                if (value > best.Value)
                {
                    best = (value, last, sum);
                }
            }
        }

        known.Add(free, best);
        return best;
    }

    private double Fill(int panel, long free)
    {
        var (_, fill, times) = panels[panel];
        var value = fill.Value(free, times, out var count);
        return Math.Max(0, value - (count * times * cutWeight));
    }

    /// <summary>What all panels but one may take and bring, by extent: only sums that bring more than every smaller one.</summary>
    private List<Sum> SumsBeside(int last, long mostFree)
    {
        List<Sum> sums = [Sum.None];
        for (var panel = 0; panel < panels.Count; panel++)
        {
            if (panel == last)
            {
                continue;
            }

            var steps = panels[panel].Fill.Breaks(mostFree, panels[panel].Times).Select(extent => (Extent: extent, Value: Fill(panel, extent))).Where(step => step.Value > 0).ToList();
            sums = Rising([.. sums, .. sums.SelectMany(sum => steps.Where(step => sum.Extent + step.Extent <= mostFree)
                .Select(step => new Sum(sum.Extent + step.Extent, sum.Value + step.Value, panel, step.Extent, sum)))]);
            if (sums.Count > MostSums)
            {
                var cell = Math.Max(1, mostFree / MostSums);
                sums = Rising(sums.Select(sum => sum with { Extent = sum.Extent / cell * cell }));
            }
        }

        return sums;
    }

    private static List<Sum> Rising(IEnumerable<Sum> sums)
    {
        var rising = new List<Sum>();
        foreach (var sum in sums.OrderBy(sum => sum.Extent).ThenByDescending(sum => sum.Value))
        {
            if (rising.Count == 0 || sum.Value > rising[^1].Value)
            {
                rising.Add(sum);
            }
        }

        return rising;
    }

    /// <summary>What some panels take together: the last of them added, and those before it.</summary>
    private sealed record Sum(long Extent, double Value, int Panel, long Taken, Sum? Before)
    {
        public static readonly Sum None = new(0, 0, -1, 0, null);
    }
}
