namespace Offcuts.Planning.Pricing;

/// <content>
/// Every leftover counted, for a bound on the worth (<see cref="PriceList.CountsAllLeftovers"/>): beside the ends of the board and the edges of its sections, which
/// the search counts, those at the ends of runs, beside trimmed blanks and beside strips. With e the extents and w(f, s) what a leftover is worth:
/// <code>
/// run(w, x)  = max { sum (v + w(f, w - s - kerf)) n : sum f n &lt;= x, s &lt;= w }
/// band(i, x) = v_i + max_y { run(s_i, y) + w(x - f_i - y, s_i) }
/// rest       = max over widths of strips of one family { their value + w(what is left beside them) + w(what is left behind each) }
/// </code>
/// A blank that leads a section is there once less beside it. A section may also be as long as its leader without having it, as often as there is room: what is not
/// needed any more is left out of plans, and may have been what led. Only what makes anything counts. Pieces with tolerances may grow, and what lies beside them
/// grows with them: leftovers are counted that much larger.
/// </content>
internal sealed partial class ProfilePricer
{
    /// <summary>No blank leads: strips do, or what led is left out.</summary>
    private const int NoLeader = -1;

    /// <summary>How often what led may be left out: as often as there is room.</summary>
    private const int MostSections = 10_000;
    private bool all;

    // By how much a part with tolerances may grow, in either direction of the cuts.
    private long moreFirst;
    private long moreSecond;

    // The longest section, and the widest blank, of so many cells, in ticks.
    private readonly Dictionary<int, long> longestOf = [];
    private readonly Dictionary<int, long> widestOf = [];
    private (int At, double Value)[][] runSteps = [];

    // For each blank the steps of across beside it: it is there once already.
    private (int At, double Value)[][] beside = [];

    // For each section the steps of across with nothing that is as long as the section.
    private (int At, double Value)[][] leaderless = [];

    private void PrepareLeftovers()
    {
        moreFirst = view.Blanks.Select(blank => view.RipFirst ? blank.MoreAcross : blank.MoreAlong).DefaultIfEmpty(0).Max();
        moreSecond = view.Blanks.Select(blank => view.RipFirst ? blank.MoreAlong : blank.MoreAcross).DefaultIfEmpty(0).Max();
        longestOf.Clear();
        widestOf.Clear();
        runSteps = [];
    }

    private void PrepareLeaders(int secondCapacity)
    {
        beside = all ? new (int, double)[value.Length][] : [];
        foreach (var i in all ? ActiveBlanks : [])
        {
            acrossKnapsack.Solve(BandItems(view.FirstCells[i], i), secondCapacity, trace: false);
            beside[i] = Steps(acrossKnapsack.Best);
        }

        leaderless = all ? new (int, double)[sectionCells.Length][] : [];
        for (var s = 0; s < leaderless.Length; s++)
        {
            acrossKnapsack.Solve(BandItems(sectionCells[s]).Where(band => view.First[band.Tag] + moreFirst < FirstOfCells(sectionCells[s])), secondCapacity, trace: false);
            leaderless[s] = Steps(acrossKnapsack.Best);
        }
    }

    /// <summary>The steps of across in a section, beside its leader.</summary>
    private (int At, double Value)[] Beside(int section, int leader) =>
        all && leader != NoLeader ? beside[leader] : across[Array.BinarySearch(sectionCells, section)];

    /// <summary>The widest of the blanks that take so many cells across, in ticks.</summary>
    private long SecondOfCells(int cells)
    {
        if (!widestOf.TryGetValue(cells, out var widest))
        {
            widestOf.Add(cells, widest = ActiveBlanks.Where(i => view.SecondCells[i] == cells).Max(i => view.Second[i]) + moreSecond);
        }

        return widest;
    }

    /// <summary>The longest that a section of so many cells is, in ticks.</summary>
    private long FirstOfCells(int cells)
    {
        if (longestOf.TryGetValue(cells, out var known))
        {
            return known;
        }

        var longest = ActiveBlanks.Where(i => view.FirstCells[i] == cells).Select(i => view.First[i]).DefaultIfEmpty(0).Max();
        for (var f = 0; !view.RipFirst && f < fills.Length; f++)
        {
            longest = view.FamilyFirstCells[f] == cells ? Math.Max(longest, view.Profile.Families[f].Along) : longest;
        }

        return longestOf[cells] = longest + moreFirst;
    }

    /// <summary>Worth of what is trimmed off beside a blank in a run of some width.</summary>
    private double BesideBlank(int blank, int widest) => WorthOf(view.First[blank] + moreFirst, SecondOfCells(widest) - view.Second[blank] - view.Kerf);

    /// <summary>The best run behind a blank in a section, by its cells, and with what is left behind it.</summary>
    private (double Value, int At) BestRun(int blank, int section)
    {
        var room = section - view.FirstCells[blank];
        var (first, second) = (FirstOfCells(section) - ((long)view.FirstCells[blank] * view.FirstCell), SecondOfCells(view.SecondCells[blank]));
        var best = (Value: WorthOf(first, second), At: 0);
        if (run.Length > 0 && room > 0)
        {
            runSteps = runSteps.Length > 0 ? runSteps : [.. run.Select(values => Steps(values))];
            foreach (var (at, made) in runSteps[Array.BinarySearch(runWidths, view.SecondCells[blank])])
            {
                if (at > room)
                {
                    break;
                }

                var with = made + WorthOf(first - (at * view.FirstCell), second);
                best = with > best.Value ? (with, at) : best;
            }
        }

        return (value[blank] + best.Value, best.At);
    }

    /// <summary>What is worth most beside the bands of a section: a leftover, or strips and what they leave.</summary>
    private (double Value, bool Strips) RestWithLeftovers(long rest, int section)
    {
        if (rest <= view.Kerf)
        {
            return (0, false);
        }

        var first = FirstOfCells(section);
        var best = WorthOf(first, rest - view.Kerf);
        return !view.RipFirst && fills.Length > 0 && RestOf(section).Value(rest, first) is var with && with > best ? (with, true) : (best, false);
    }

    /// <summary>The best content of a section without its leader.</summary>
    private double WithoutLeader(int section, long second)
    {
        var best = double.NegativeInfinity;
        foreach (var (at, bands) in leaderless[Array.BinarySearch(sectionCells, section)])
        {
            if (at > view.SecondCapacity(second))
            {
                break;
            }

            var (rest, strips) = RestWithLeftovers(second + view.Kerf - ((long)at * view.SecondCell), section);
            best = at > 0 || strips ? Math.Max(best, bands + rest) : best;
        }

        return best;
    }
}
