using Offcuts.Planning.Bounds;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>The search for one choice of species: first plan, linear program, bound, dives, integer programs over the pool.</summary>
internal sealed class ScenarioSearch
{
    private const int MostDives = 8;
    private const int RebuildsPerDive = 6;
    private readonly SearchClock clock;
    private readonly PatternPricer pricer;
    private readonly Dictionary<string, Pattern> pool = new(StringComparer.Ordinal);
    private readonly Action<ScenarioSearch> improved;

    public ScenarioSearch(PlanningModel model, SearchClock clock, Action<ScenarioSearch> improved)
    {
        Model = model;
        this.clock = clock;
        this.improved = improved;
        pricer = new PatternPricer(model);
    }

    public PlanningModel Model { get; }

    public Solution? Best { get; private set; }

    /// <summary>No plan of this scenario costs less, in minor units.</summary>
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

        // Even where time ran out before the program converged, its prices give a bound.
        TakeBound(master, need);
        if (!IsProved)
        {
            master.SetWeights(CostWeights.MoneyOnly);
            ColumnGeneration.Run(Model, master, pricer, CostWeights.MoneyOnly, need, clock, 200, _ => true, Keep);
            Bound = ColumnGeneration.TightenBound(Model, master, pricer, need, clock, Bound);
        }

        improved(this);
    }

    /// <summary>Dives and integer programs until the money is proved and nothing more is worth trying. With a rival plan of another scenario, stops once it cannot win.</summary>
    public void Improve(int seed, Func<long?> rivalMoney)
    {
        var random = new Random(seed);
        for (var n = 0; n < MostDives && !clock.IsOver; n++)
        {
            if ((rivalMoney() is { } rival && rival < RoundedBound) || (n > 1 && IsProved))
            {
                break;
            }

            Offer(Dive().Run([], n < 2 ? null : Best, n, random));
            if (n == 1)
            {
                RaiseBound(rivalMoney());
            }

            if (!IsProved && Best is { IsComplete: true } && n is 1 or 4 or MostDives - 1)
            {
                Offer(PoolProgram.Solve(Model, Pool(), Best!.Money, byMoney: true, Best, clock, TimeSpan.FromSeconds(1)));
            }

            Rebuild(random, RebuildsPerDive);
        }

        if (rivalMoney() is { } other && other < RoundedBound)
        {
            return;
        }

        if (Best is { IsComplete: true } best && !clock.IsOver)
        {
            Offer(PoolProgram.Solve(Model, Pool(), best.Money, byMoney: false, best, clock, TimeSpan.FromSeconds(1)));
        }
    }

    /// <summary>Branches on the purchases, with half of the time that is left; a bound above a rival scenario's cost is as good as any.</summary>
    private void RaiseBound(long? rival)
    {
        if (!IsProved && Best is { IsComplete: true } best)
        {
            var known = Math.Min(best.Money, rival ?? long.MaxValue);
            Bound = Math.Max(Bound, new PurchaseTree(Model, pricer, clock).Raise([.. pool.Values], Bound, known, clock.Left / 2));
            improved(this);
        }
    }

    /// <summary>
    /// Large neighbourhood search: takes the bought boards and some others out of the best plan and plans anew for what they
    /// gave, the rest staying as it is.
    /// </summary>
    private void Rebuild(Random random, int times)
    {
        for (var n = 0; n < times && !clock.IsOver && !IsProved && Best is { IsComplete: true } best; n++)
        {
            var free = 6 + random.Next(1 + Math.Min(20, best.Cuts.Count / 2));
            var others = best.Cuts.Where(cut => cut.Pattern.Money == 0).OrderBy(_ => random.Next()).Skip(free);
            var bought = best.Cuts.Where(cut => cut.Pattern.Money > 0).OrderBy(_ => random.Next()).Skip(4);
            Offer(Dive().Run([.. others, .. bought], best, random.Next(2), random));
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
            improved(this);
        }
    }
}
