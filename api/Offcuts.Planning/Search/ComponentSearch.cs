using Offcuts.Planning.Bounds;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// The search for one component of a problem, in steps that the whole search calls as time allows: first plan, linear program,
/// dives, branching on purchases, deeper search, integer programs over the pool.
/// </summary>
internal sealed class ComponentSearch
{
    private const int RebuildsPerRound = 6;
    private const int EnrichmentsPerRound = 8;
    private const int MostPatterns = 3000;
    private readonly SearchClock clock;
    private readonly PatternPricer pricer;
    private readonly PurchaseTree tree;
    private readonly Dictionary<string, Pattern> pool = new(StringComparer.Ordinal);
    private readonly Action improved;
    private readonly Random random;
    private double[] duals = [];
    private bool isRelaxed;
    private bool hasDived;

    public ComponentSearch(PlanningModel model, SearchClock clock, int seed, Action improved)
    {
        random = new Random(seed);
        Model = model;
        this.clock = clock;
        this.improved = improved;
        pricer = new PatternPricer(model);
        tree = new PurchaseTree(model, pricer, clock);
    }

    public PlanningModel Model { get; }

    public Solution? Best { get; private set; }

    /// <summary>No plan of this component costs less, in minor units.</summary>
    public double Bound { get; private set; }

    /// <summary>The bound rounded up to a total that purchases can have.</summary>
    public long RoundedBound => Best is { IsComplete: true } best
        ? AttainableTotals.RoundUp(Bound, best.Money, Model.Boards.Select(board => board.Price))
        : (long)Math.Ceiling(Math.Max(0, Bound));

    public bool IsProved => Best is { IsComplete: true } best && best.Money <= RoundedBound;

    /// <summary>The quick first plan.</summary>
    public void Start() => Offer(Model.Rows.Count == 0 ? new Solution(Model, []) : GreedyStart.Run(Model, pricer, Keep));

    /// <summary>Solves the linear programs: patterns for the dives, and the bound on the money.</summary>
    public void Relax()
    {
        if (isRelaxed)
        {
            return;
        }

        isRelaxed = true;
        using var master = new MasterProblem(Model, CostWeights.Blend);
        foreach (var pattern in pool.Values)
        {
            master.Add(pattern);
        }

        var need = Need();
        ColumnGeneration.Run(Model, master, pricer, CostWeights.Blend, need, clock, 200, _ => true, Keep);
        if (Best is { IsComplete: true, Money: 0 })
        {
            return;
        }

        duals = (double[])master.CoverDuals.Clone();

        // Even where time ran out before the program converged, its prices give a bound.
        TakeBound(master, need);
        if (!IsProved)
        {
            master.SetWeights(CostWeights.MoneyOnly);
            ColumnGeneration.Run(Model, master, pricer, CostWeights.MoneyOnly, need, clock, 200, _ => true, Keep);
            Bound = ColumnGeneration.TightenBound(Model, master, pricer, need, clock, Bound);
        }

        improved();
    }

    /// <summary>Two dives from the linear program.</summary>
    public void FirstDives()
    {
        for (var n = hasDived ? 2 : 0; n < 2 && !clock.IsOver; n++)
        {
            Offer(Dive().Run(null, n, random));
        }

        hasDived = true;
    }

    /// <summary>Branches on the purchases until the bound reaches <paramref name="known"/> or the time given is over.</summary>
    public void RaiseBound(long known, TimeSpan share)
    {
        if (!IsProved && known > RoundedBound)
        {
            Bound = Math.Max(Bound, tree.Raise([.. pool.Values], Bound, known, share));
            improved();
        }
    }

    /// <summary>One round more: a dive with discrepancies, rebuilt neighbourhoods, and every third time the integer program.</summary>
    public void Deepen(int round)
    {
        if (clock.IsOver)
        {
            return;
        }

        Offer(Dive().Run(Best, round + 2, random));
        if (Best is { IsComplete: false } lacking)
        {
            Enrich();
            Offer(PoolProgram.Solve(
                Model, Pool(), new Remainder(Model), [], long.MaxValue, PoolGoal.Completeness, lacking, clock, TimeSpan.FromSeconds(1)));
        }

        if (!IsProved && Best is { IsComplete: true } best && round % 3 == 0)
        {
            Enrich();
            Offer(PoolProgram.Solve(Model, Pool(), new Remainder(Model), [], best.Money, PoolGoal.Money, best, clock, TimeSpan.FromSeconds(1)));
        }

        Rebuild(RebuildsPerRound);
    }

    private void Enrich()
    {
        var times = pool.Count < MostPatterns ? EnrichmentsPerRound : 0;
        foreach (var pattern in new Enrichment(Model, pricer, clock).Run(duals, new Remainder(Model), times, random))
        {
            Keep(pattern);
        }
    }

    /// <summary>Least worth for the same money, over the patterns at hand.</summary>
    public void Polish()
    {
        if (Best is { IsComplete: true } best && best.Cuts.Count > 0 && !clock.IsOver)
        {
            Offer(PoolProgram.Solve(Model, Pool(), new Remainder(Model), [], best.Money, PoolGoal.Worth, best, clock, TimeSpan.FromSeconds(1)));
        }
    }

    /// <summary>
    /// Large neighbourhood search: takes some bought boards and some others out of the best plan and plans anew for what they
    /// gave, the rest staying as it is.
    /// </summary>
    private void Rebuild(int times)
    {
        for (var n = 0; n < times && !clock.IsOver && !IsProved && Best is { IsComplete: true } best; n++)
        {
            var free = 6 + random.Next(1 + Math.Min(20, best.Cuts.Count / 2));
            var others = best.Cuts.Where(cut => cut.Pattern.Money == 0).OrderBy(_ => random.Next()).Skip(free);
            var bought = best.Cuts.Where(cut => cut.Pattern.Money > 0).OrderBy(_ => random.Next()).Skip(5);
            Offer(new Rebuilding(Model, pricer, pool.Values, clock, Keep).Run([.. others, .. bought], best, random));
        }
    }

    private Dive Dive() => new(Model, pricer, [.. pool.Values], clock, Keep);

    private long[] Need() => [.. Model.Rows.Select(row => row.Needed)];

    private List<Pattern> Pool() => [.. pool.Values];

    private void TakeBound(MasterProblem master, long[] need)
    {
        var prices = PriceList.FromDuals(Model.Rows, master.CoverDuals, need, 0);
        Bound = Math.Max(Bound, SafeBound.Of(Model, pricer, prices));
    }

    private void Keep(Pattern pattern)
    {
        if (pattern.Cover.Length == 0)
        {
            return;
        }

        if (!pool.TryGetValue(pattern.Key, out var known) || pattern.Worth < known.Worth)
        {
            pool[pattern.Key] = pattern;
        }
    }

    private void Offer(Solution? solution)
    {
        if (solution is not null && solution.Beats(Best))
        {
            Best = solution;
            improved();
        }
    }
}
