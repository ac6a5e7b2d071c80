using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// Prices the patterns of one profile with one direction of first cuts by nested knapsacks: blanks into bands, bands across a
/// section, sections into the board.
/// </summary>
/// <remarks>
/// Every section is led by a blank (or a panel's strips) that spans it, so its extent is that blank's; a leader j leads at most
/// as many sections as it is needed. With values v, extents f (first) and s (second), all including one kerf:
/// <code>
/// run(w, x)    = max { sum v n : sum f n &lt;= x, s &lt;= w }                                  third cuts, if the shop recuts
/// band(i, x)   = v_i + run(s_i, x - f_i)
/// across(x, y) = max { sum band(i, x) n : sum s n &lt;= y, f_i &lt;= x }                      second cuts
/// section(j)   = v_j + max_y { across(f_j, y) + rest(S - s_j - y) }                        rest: strips or a leftover
/// board        = max { sum section(j) n_j + rest : sum f_j n_j &lt;= F, n_j &lt;= need_j }     first cuts
/// </code>
/// Counts are bounded by what is needed within each knapsack, not across them: the value is an upper bound over all patterns
/// of this class, and exact where a board is one band wide (Gilmore and Gomory 1965 for the nested scheme).
/// With <see cref="PriceList.CountsAllLeftovers"/> it is one with every leftover counted (see ProfilePricer.Leftovers.cs).
/// </remarks>
internal sealed partial class ProfilePricer
{
    private readonly PlanningModel model;
    private readonly OrientedProfile view;
    private readonly BoundedKnapsack runKnapsack = new();
    private readonly BoundedKnapsack acrossKnapsack = new();
    private readonly BoundedKnapsack boardKnapsack = new();
    private PriceList prices = null!;
    private StripFill[] fills = [];
    private double[] value = [];
    private double cutWeight;

    // run[w][x]: best run of blanks no wider than the w-th distinct second extent.
    private int[] runWidths = [];
    private double[][] run = [];

    // Distinct section extents in cells and, for each, the steps of across(x, .).
    private int[] sectionCells = [];
    private (int At, double Value)[][] across = [];

    public ProfilePricer(PlanningModel model, OrientedProfile view)
    {
        this.model = model;
        this.view = view;
    }

    public OrientedProfile View => view;

    /// <summary>Takes new prices; <paramref name="mostSecond"/> is the largest second extent of any board to come, in ticks.</summary>
    public void Prepare(PriceList priceList, long mostSecond)
    {
        prices = priceList;
        cutWeight = prices.WorthWeight * model.HandlingPerCut;
        all = prices.CountsAllLeftovers;
        value = [.. view.Blanks.Select(ValueOf)];
        fills = [.. view.Profile.Families.Select(family => new StripFill(family, model.Kerf, prices))];
        mostFree = mostSecond + view.Kerf;
        mixes.Clear();
        PrepareLeftovers();
        PrepareRuns();
        PrepareSections(view.SecondCapacity(mostSecond));
    }

    /// <summary>
    /// Lets go of everything that <see cref="Prepare"/> and <see cref="Open"/> solved for. A large shop has hundreds of pricers, and of most of them only a few
    /// patterns or values are wanted at a time: together what they keep would be most of the search's memory.
    /// </summary>
    public void Forget()
    {
        foreach (var knapsack in new[] { runKnapsack, acrossKnapsack, boardKnapsack })
        {
            knapsack.Forget();
        }

        (run, across, beside, leaderless, runSteps, contents, leaders, boardSteps) = ([], [], [], [], [], [], [], []);
        (openMix, openRest) = (null, null);
        mixes.Clear();
        nearRuns.Clear();
    }

    // A blank that gives several pieces counts for no more of them than are needed.
    private double ValueOf(BlankOption blank)
    {
        var need = prices.Need[blank.Row];
        return need <= 0 ? 0 : (prices.Piece[blank.Row] * Math.Min(blank.Yield, need)) - (cutWeight * blank.Within(need).Resaws);
    }

    private IEnumerable<int> ActiveBlanks => Enumerable.Range(0, value.Length).Where(i => value[i] > 0);

    private int Copies(int blank) => (int)Math.Min(10_000, view.Blanks[blank].Times(prices.Need[view.Blanks[blank].Row]));

    private void PrepareRuns()
    {
        run = [];
        var longest = LongestSection();
        var active = ActiveBlanks.ToList();
        if (!model.Recut || active.Count == 0 || 2 * active.Min(i => view.FirstCells[i]) > longest)
        {
            return;
        }

        // From narrow to wide, each width adds its blanks to the runs of the narrower ones.
        runWidths = [.. active.Select(i => view.SecondCells[i]).Distinct().Order()];
        run = new double[runWidths.Length][];
        runKnapsack.Clear(longest, trace: false);
        for (var w = 0; w < runWidths.Length; w++)
        {
            if (all)
            {
                // What lies beside a blank in a run depends on the run's width.
                runKnapsack.Solve(RunItems(runWidths[w]), longest, trace: false);
            }

            foreach (var i in active.Where(i => !all && view.SecondCells[i] == runWidths[w]))
            {
                runKnapsack.Add(RunItem(i, runWidths[w]));
            }

            run[w] = runKnapsack.Best.ToArray();
        }
    }

    private int LongestSection()
    {
        var longest = 0;
        foreach (var i in ActiveBlanks)
        {
            longest = Math.Max(longest, view.FirstCells[i]);
        }

        for (var f = 0; f < fills.Length; f++)
        {
            if (!view.RipFirst && !fills[f].IsWorthless)
            {
                longest = Math.Max(longest, view.FamilyFirstCells[f]);
            }
        }

        return longest;
    }

    private IEnumerable<KnapsackItem> RunItems(int widest) => ActiveBlanks
        .Where(i => view.SecondCells[i] <= widest)
        .Select(i => RunItem(i, widest));

    private KnapsackItem RunItem(int blank, int widest) =>
        new(view.FirstCells[blank], value[blank] - cutWeight + (all ? BesideBlank(blank, widest) : 0), Copies(blank), blank);

    private void PrepareSections(int secondCapacity)
    {
        var extents = ActiveBlanks.Select(i => view.FirstCells[i]);
        if (!view.RipFirst)
        {
            extents = extents.Concat(Enumerable.Range(0, fills.Length).Where(f => !fills[f].IsWorthless).Select(f => view.FamilyFirstCells[f]));
        }

        sectionCells = [.. extents.Distinct().Order()];
        across = new (int, double)[sectionCells.Length][];
        for (var s = 0; s < sectionCells.Length; s++)
        {
            var capacity = secondCapacity - (all ? 0 : LeastLeader(sectionCells[s]));
            acrossKnapsack.Solve(capacity < 0 ? [] : BandItems(sectionCells[s]), Math.Max(0, capacity), trace: false);
            across[s] = Steps(acrossKnapsack.Best);
        }

        PrepareLeaders(secondCapacity);
    }

    /// <summary>What the narrowest leader of sections of an extent takes across; nothing where strips lead.</summary>
    private int LeastLeader(int section) =>
        !view.RipFirst && Enumerable.Range(0, fills.Length).Any(f => !fills[f].IsWorthless && view.FamilyFirstCells[f] == section)
            ? 0
            : ActiveBlanks.Where(i => view.FirstCells[i] == section).Min(i => view.SecondCells[i]);

    private IEnumerable<KnapsackItem> BandItems(int section, int leader = NoLeader) => ActiveBlanks
        .Where(i => view.FirstCells[i] <= section)
        .Select(i => new KnapsackItem(view.SecondCells[i], BandValue(i, section) - cutWeight, Copies(i) - (all && i == leader ? 1 : 0), i));

    private double BandValue(int blank, int section)
    {
        var room = section - view.FirstCells[blank];
        return all ? BestRun(blank, section).Value
            : run.Length == 0 || room <= 0 ? value[blank]
            : value[blank] + run[Array.BinarySearch(runWidths, view.SecondCells[blank])][room];
    }

    /// <summary>Only the capacities at which the best value rises matter.</summary>
    private static (int, double)[] Steps(ReadOnlySpan<double> best)
    {
        var steps = new List<(int, double)> { (0, 0) };
        for (var r = 1; r < best.Length; r++)
        {
            if (best[r] > best[r - 1])
            {
                steps.Add((r, best[r]));
            }
        }

        return [.. steps];
    }

    /// <summary>The best content of a section: value, how far across the bands reach in cells, and what fills the rest.</summary>
    private Content BestContent(int section, long first, long second, int leaderCells, double leaderValue, bool stripsRequired, int leader = NoLeader)
    {
        var best = new Content(double.NegativeInfinity, 0, false);
        var capacity = view.SecondCapacity(second) - leaderCells;
        foreach (var (at, bandValue) in Beside(section, leader))
        {
            if (at > capacity)
            {
                break;
            }

            // What is left across, with one kerf: the sum of extents plus kerfs is whole cells.
            var rest = second + view.Kerf - ((long)(leaderCells + at) * view.SecondCell);
            var (restValue, strips) = Rest(first, rest, section);
            if (stripsRequired && !strips)
            {
                continue;
            }

            if (leaderValue + bandValue + restValue > best.Value)
            {
                best = new Content(leaderValue + bandValue + restValue, at, strips);
            }
        }

        return best;
    }

    private (double Value, bool Strips) Rest(long first, long rest, int section)
    {
        if (rest <= view.Kerf)
        {
            return (0, false);
        }

        if (all)
        {
            return RestWithLeftovers(rest, section);
        }

        var best = prices.WorthWeight > 0 ? WorthOf(first, rest - view.Kerf) : 0;
        return !view.RipFirst && fills.Length > 0 && MixOf(section).Value(rest) is var filled && filled > best ? (filled, true) : (best, false);
    }

    /// <summary>What a leftover with such extents counts.</summary>
    private double WorthOf(long first, long second) => first <= 0 || second <= 0 ? 0
        : prices.WorthWeight * (view.RipFirst ? view.Profile.WorthOf(second, first) : view.Profile.WorthOf(first, second));

    private readonly record struct Content(double Value, int At, bool Strips);
}
