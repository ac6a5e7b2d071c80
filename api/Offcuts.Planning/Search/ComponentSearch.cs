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
    private const int RebuildsPerRound = 3;
    private const int LeastFreed = 6;
    private const int MostPolishRounds = 4;
    private const int PolishRebuilds = 2;
    private const int BoughtFreed = 7;
    private const int EnrichmentsPerRound = 8;
    private const int MostPatterns = 3000;

    /// <summary>The part of the time left in which a plan for the least possible total is sought.</summary>
    private const int SharpenShare = 2;

    /// <summary>With more patterns the program over all of them takes longer than it is worth.</summary>
    private const int MostForWhole = 400;
    private readonly SearchClock clock;
    private readonly PatternPricer pricer;
    private readonly PurchaseTree tree;
    private readonly PatternPricer[] rebuilders;
    private readonly Dictionary<string, Pattern> pool = new(StringComparer.Ordinal);
    private readonly Action improved;
    private readonly Random random;
    private readonly WarmStart warm;
    private double[] duals = [];
    private double[] boardDuals = [];
    private double leastMissing;
    private bool isRelaxed;
    private bool hasDived;
    private bool hasStartedFromNothing;

    public ComponentSearch(PlanningModel model, SearchClock clock, int seed, Action improved)
    {
        random = new Random(seed);
        Model = model;
        this.clock = clock;
        this.improved = improved;
        pricer = new PatternPricer(model);
        warm = new WarmStart(model);
        tree = new PurchaseTree(model, pricer, clock, solution => Offer(solution), Keep);
        rebuilders = [pricer, new PatternPricer(model)];
    }

    public PlanningModel Model { get; }

    public Solution? Best { get; private set; }

    /// <summary>No plan of this component costs less, in minor units.</summary>
    public double Bound { get; private set; }

    /// <summary>Whether less might be missing than in the best plan: the linear program leaves less out.</summary>
    public bool MayLackLess => Best is { IsComplete: false } best
        && Model.Rows.Sum(row => Math.Max(0, best.Short[row.Index]) / (row is StripRow ? (double)row.Needed : 1)) > Math.Ceiling(leastMissing - 1e-6) + 1e-6;

    /// <summary>The bound rounded up to a total that purchases can have.</summary>
    public long RoundedBound => Best is { IsComplete: true } best
        ? AttainableTotals.RoundUp(Bound, best.Money, Model.Boards.Select(board => board.Price))
        : (long)Math.Ceiling(Math.Max(0, Bound));

    public bool IsProved => Best is { IsComplete: true } best && best.Money <= RoundedBound;

    /// <summary>How many pieces the earlier plan's cuts give this component; 0 where there is none.</summary>
    public int PiecesKept => warm.Pieces;

    /// <summary>The quick first plan; where there is an earlier plan, what can be kept of that with what it lacks.</summary>
    public void Start()
    {
        foreach (var pattern in warm.Patterns)
        {
            Keep(pattern);
        }

        Offer(Model.Rows.Count == 0 ? new Solution(Model, []) : GreedyStart.Run(Model, pricer, warm.Cuts, Keep));
        if (warm.Cuts.Count > 0 && Best is { IsComplete: false })
        {
            StartFromNothing();
        }
    }

    /// <summary>Where there is an earlier plan: what it lacks now made better, and a first plan from nothing, so that the search begins no worse than without it.</summary>
    public void StartAgain()
    {
        if (warm.Cuts.Count == 0 || clock.IsOver)
        {
            return;
        }

        if (Best is { IsComplete: true } begun && !Remainder.After(Model, warm.Cuts).IsCovered)
        {
            Offer(new Rebuilding(Model, pricer, Pool(), clock, Keep).Run(warm.Cuts, begun, PoolGoal.Money, random));
        }

        StartFromNothing();
    }

    private void StartFromNothing()
    {
        if (!hasStartedFromNothing)
        {
            hasStartedFromNothing = true;
            Offer(GreedyStart.Run(Model, pricer, [], Keep));
        }
    }

    /// <summary>Solves the linear programs: patterns for the dives, and the bound on the money.</summary>
    public void Relax()
    {
        if (isRelaxed)
        {
            return;
        }

        isRelaxed = true;
        using var master = new MasterProblem(Model, CostWeights.Blend(Model));
        foreach (var pattern in pool.Values)
        {
            master.Add(pattern);
        }

        var need = new Remainder(Model).Need;
        ColumnGeneration.Run(Model, master, pricer, CostWeights.Blend(Model), need, clock, 200, _ => true, Keep);
        duals = (double[])master.CoverDuals.Clone();
        boardDuals = (double[])master.BoardDuals.Clone();
        if (Best is { IsComplete: true, Money: 0 })
        {
            return;
        }

        leastMissing = master.Missing;

        // Even where time ran out before the program converged, its prices give a bound.
        TakeBound(master, need);
        if (!IsProved && Best is { IsComplete: true })
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
        if (hasDived)
        {
            return;
        }

        // Where the money is settled beforehand, the dives are for the worth.
        hasDived = true;
        var isSettled = IsProved;
        Sharpen();
        if (isSettled || !IsProved)
        {
            DiveTwice(0);
        }
    }

    /// <summary>Where few totals are possible: whether there is a plan for the least of them that the bound allows.</summary>
    private void Sharpen()
    {
        if (Best is not { IsComplete: true } best || IsProved || Bound <= 0 || clock.IsNearlyOver)
        {
            return;
        }

        var target = RoundedBound;
        var cheapest = Model.Boards.Where(board => board.Price > 0).Min(board => board.Price);
        if (AttainableTotals.RoundUp(target + 1, best.Money, Model.Boards.Select(board => board.Price)) - target >= cheapest / 2)
        {
            Bound = Math.Max(Bound, tree.Sharpen([.. pool.Values], Bound, target, clock.Left / SharpenShare));
            improved();
        }
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

    /// <summary>One round more: rebuilt neighbourhoods, and by turns a dive with discrepancies or the integer program over all patterns.</summary>
    public void Deepen(int round)
    {
        if (clock.IsOver)
        {
            return;
        }

        if (Best is { IsComplete: false } lacking)
        {
            Offer(Dive().Run(Best, round + 2, random));
            Enrich();
            Offer(PoolProgram.Solve(
                Model, Pool(), new Remainder(Model), [], long.MaxValue, PoolGoal.Completeness, lacking, clock, TimeSpan.FromSeconds(1)));
        }

        if (round % 3 == 1 && !IsProved)
        {
            DiveTwice(round + 1);
        }

        if (round % 3 == 0 && !IsProved && pool.Count < MostForWhole && Best is { IsComplete: true } best)
        {
            Enrich();
            Offer(PoolProgram.Solve(Model, Pool(), new Remainder(Model), [], best.Money, PoolGoal.Money, best, clock, TimeSpan.FromSeconds(1)));
        }

        Rebuild(RebuildsPerRound, PoolGoal.Money);
    }

    private void Enrich()
    {
        var times = pool.Count < MostPatterns ? EnrichmentsPerRound : 0;
        foreach (var pattern in new Enrichment(Model, pricer, clock).Run(duals, boardDuals, new Remainder(Model), times, random))
        {
            Keep(pattern);
        }
    }

    /// <summary>Least worth for the same money.</summary>
    public void Polish()
    {
        Relay();
        for (var (round, before) = (0, (Solution?)null); round < MostPolishRounds && Best != before && Best is { IsComplete: true, Cuts.Count: > 0 } best && !clock.IsOver; round++)
        {
            before = best;
            Offer(PoolProgram.Solve(Model, Pool(), new Remainder(Model), [], best.Money, PoolGoal.Worth, best, clock, TimeSpan.FromSeconds(1)));
            Rebuild(PolishRebuilds, PoolGoal.Worth);
            Relay();
        }
    }

    private void Relay()
    {
        if (Best is { IsComplete: true } best)
        {
            Offer(new Relaying(Model, pricer, clock).Run(best));
        }
    }

    /// <summary>
    /// Large neighbourhood search: takes some bought boards and some others out of the best plan and plans anew for what they
    /// gave, the rest staying as it is. Always two at a time, whatever the machine has, so that the plan is the same everywhere.
    /// </summary>
    private void Rebuild(int times, PoolGoal goal)
    {
        for (var n = 0; n < times && !clock.IsNearlyOver && (!IsProved || goal == PoolGoal.Worth) && Best is { IsComplete: true } best; n++)
        {
            var known = Pool();
            var tries = rebuilders.Select(each => (Pricer: each, Kept: Keepers(best), Random: new Random(random.Next()), Found: new List<Pattern>())).ToList();
            var solutions = new Solution?[tries.Count];
            Parallel.For(0, tries.Count, at => solutions[at] =
                new Rebuilding(Model, tries[at].Pricer, known, clock, tries[at].Found.Add).Run(tries[at].Kept, best, goal, tries[at].Random));
            foreach (var pattern in tries.SelectMany(each => each.Found))
            {
                Keep(pattern);
            }

            foreach (var solution in solutions)
            {
                Offer(solution);
            }
        }
    }

    /// <summary>
    /// The cuts that stay: all but a few bought boards and some others, those first that cost more than the linear program's prices
    /// give for what they make: these losses add up to what the plan costs more than the bound.
    /// </summary>
    private List<(Pattern Pattern, int Count)> Keepers(Solution best)
    {
        var losses = best.Cuts.Select(cut => Math.Max(0, CostWeights.Blend(Model).Of(cut.Pattern) - boardDuals[cut.Pattern.Board.Index]
            - cut.Pattern.Cover.Sum(cover => duals[cover.Row] * Share(cover.Row, cover.Amount)))).ToList();
        var even = 1e-9 + (losses.Sum() / Math.Max(1, losses.Count));
        var order = best.Cuts.Select((cut, at) => (Cut: cut, At: -Math.Log(1 - random.NextDouble()) / (losses[at] + even)))
            .OrderBy(entry => entry.At).Select(entry => entry.Cut).ToList();
        var free = LeastFreed + random.Next(1 + Math.Min(20, best.Cuts.Count / 2));
        return [.. order.Where(cut => cut.Pattern.Money == 0).Skip(free), .. order.Where(cut => cut.Pattern.Money > 0).Skip(BoughtFreed)];
    }

    private double Share(int row, long amount) => Model.Rows[row] is StripRow ? (double)amount / Model.Rows[row].Needed : amount;

    /// <summary>
    /// Two dives at a time, and for each the integer program on what its last boards should make. Always two, whatever the machine
    /// has, so that the plan is the same everywhere.
    /// </summary>
    private void DiveTwice(int discrepancies)
    {
        var known = Pool();
        var tries = rebuilders.Select((each, n) => (Pricer: each, Discrepancies: discrepancies + n, Random: new Random(random.Next()), Found: new List<Pattern>())).ToList();
        var solutions = new (Solution? Dived, Solution? Rebuilt)[tries.Count];
        Parallel.For(0, tries.Count, at =>
        {
            var (pricing, discrepancy, dice, found) = tries[at];
            var dive = new Dive(Model, pricing, known, clock, found.Add);
            var dived = dive.Run(discrepancies == 0 ? null : Best, discrepancy, dice);
            var beaten = dived is not null && dived.Beats(Best) ? dived : Best;
            solutions[at] = (dived, beaten is { IsComplete: true } && dive.Sound.Count > 0
                ? new Rebuilding(Model, pricing, [.. known, .. found], clock, found.Add).Run(dive.Sound, beaten, PoolGoal.Money, dice)
                : null);
        });
        foreach (var pattern in tries.SelectMany(each => each.Found))
        {
            Keep(pattern);
        }

        foreach (var (dived, rebuilt) in solutions)
        {
            Offer(dived);
            Offer(rebuilt);
        }
    }

    private Dive Dive() => new(Model, pricer, [.. pool.Values], clock, Keep);

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
