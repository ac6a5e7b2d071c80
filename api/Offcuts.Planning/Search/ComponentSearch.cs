using Offcuts.Planning.Bounds;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Restart;

namespace Offcuts.Planning.Search;

/// <summary>
/// The search for one component of a problem, in steps that the whole search calls as time allows: first plan, linear program,
/// dives, branching on purchases, deeper search, integer programs over the pool.
/// </summary>
internal sealed class ComponentSearch
{
    private const int RebuildsPerRound = 3;
    private const int MostPolishRounds = 4;
    private const int PolishRebuilds = 2;
    private const int EnrichmentsPerRound = 8;
    private const int MostPatterns = 3000;

    /// <summary>Rounds of column generation where a plan need only come near the best one for the worth: before the dive, and at each of its steps.</summary>
    private const int RoundsToSettle = 4;
    private const int RoundsPerSettledStep = 1;

    /// <summary>The part of the time left in which a plan for the least possible total is sought.</summary>
    private const int SharpenShare = 2;

    /// <summary>Branching that leaves more than this of the gap brought little, and gets half of the time from then on, down to a least part.</summary>
    private const double LittleProgress = 0.9;
    private const double LeastEagerness = 0.125;

    /// <summary>With more patterns the program over all of them takes longer than it is worth; of few boards more are worth it, and more time.</summary>
    private const int MostForWhole = 400;
    private const int MostForWholeOfFew = 2000;
    private const int FewBoards = 30;

    /// <summary>From so many boards on the paid core is searched before the linear programs, for a part of the time left and so many rounds.</summary>
    private const int ManyBoards = 1000;
    private const int EarlyShare = 2;
    private const int EarlyRounds = 12;
    private readonly SearchClock clock;
    private readonly PatternPricer pricer;
    private readonly PurchaseProgram program;
    private readonly PurchaseTree tree;
    private readonly LeastTotal leastTotal;
    private readonly PlansAtHand hand;
    private readonly TwoAtATime two;
    private readonly Neighbourhoods neighbourhoods;
    private readonly Action improved;
    private readonly Random random;
    private readonly WarmStart warm;
    private readonly CoreSearch core;
    private readonly List<double[]> boundDuals = [];
    private readonly Dictionary<long, double> worthBounds = [];

    // The part of its time that branching on the purchases gets.
    private double eagerness = 1;
    private double[] duals = [];
    private double[] boardDuals = [];
    private double leastMissing;
    private PatternTransfer? transfer;
    private bool hasDived;
    private bool hasStartedFromNothing;

    /// <param name="model">The component.</param>
    /// <param name="wanted">What it is to make; null if its paid core is not to be searched apart.</param>
    /// <param name="cores">The searches for the cores of all components; null likewise.</param>
    /// <param name="clock">Limits the time.</param>
    /// <param name="seed">Of the dice.</param>
    /// <param name="improved">Called when there is a better plan or bound.</param>
    public ComponentSearch(PlanningModel model, Wanted? wanted, PaidCores? cores, SearchClock clock, int seed, Action improved)
    {
        random = new Random(seed);
        Model = model;
        this.clock = clock;
        this.improved = improved;
        pricer = new PatternPricer(model);
        warm = new WarmStart(model);
        hand = new PlansAtHand(improved);
        core = new CoreSearch(model, wanted, cores, pricer, hand, clock, random);
        two = new TwoAtATime(model, pricer, hand, random);
        neighbourhoods = new Neighbourhoods(model, clock, hand, two, random);
        program = new PurchaseProgram(model, pricer, clock);
        var listing = new PatternListing(model, pricer, clock, hand.Keep);
        tree = new PurchaseTree(model, program, listing, clock, hand.Offer);
        leastTotal = new LeastTotal(model, program, listing, clock);
    }

    public PlanningModel Model { get; }

    public Solution? Best => hand.Best;

    /// <summary>The patterns that it has met.</summary>
    public IReadOnlyList<Pattern> Patterns => hand.Patterns();

    /// <summary>The prices at which its linear programs gave bounds, the last the best; for whole rows.</summary>
    public IReadOnlyList<double[]> BoundDuals => boundDuals;

    /// <summary>No plan of this component costs less, in minor units.</summary>
    public double Bound { get; private set; }

    /// <summary>Whether less might be missing than in the best plan: the linear program leaves less out.</summary>
    public bool MayLackLess => Best is { IsComplete: false } best
        && Model.Rows.Sum(row => row.Scaled(Math.Max(0, best.Short[row.Index]))) > Math.Ceiling(leastMissing - 1e-6) + 1e-6;

    /// <summary>The bound rounded up to a total that purchases can have.</summary>
    public long RoundedBound => Best is { IsComplete: true } best
        ? AttainableTotals.RoundUp(Bound, best.Money, Model.Boards.Select(board => board.Price))
        : (long)Math.Ceiling(Math.Max(0, Bound));

    public bool IsProved => Best is { IsComplete: true } best && best.Money <= RoundedBound;

    /// <summary>Whether the linear programs are solved.</summary>
    public bool IsRelaxed { get; private set; }

    /// <summary>How many pieces the earlier plan's cuts give this component; 0 where there is none.</summary>
    public int PiecesKept => warm.Pieces;

    /// <summary>The quick first plan; where there is an earlier plan, what can be kept of that with what it lacks.</summary>
    public void Start()
    {
        hand.Keep(warm.Patterns);
        hand.Offer(Model.Rows.Count == 0 ? new Solution(Model, []) : GreedyStart.Run(Model, pricer, clock, warm.Cuts, hand.Keep));
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
            hand.Offer(new Rebuilding(Model, pricer, hand.Patterns(), clock, hand.Keep).Run(warm.Cuts, begun, PoolGoal.Money, random));
        }

        StartFromNothing();
    }

    private void StartFromNothing()
    {
        if (!hasStartedFromNothing)
        {
            hasStartedFromNothing = true;
            hand.Offer(GreedyStart.Run(Model, pricer, clock, [], hand.Keep));
        }
    }

    /// <summary>Takes over what another component, of another choice of species, has met and this one can cut as well.</summary>
    public void Borrow(ComponentSearch other) =>
        hand.Keep(other.hand.Patterns().Select(pattern => (transfer ??= new PatternTransfer(Model)).Of(pattern, other.Model)).OfType<Pattern>());

    /// <summary>Solves the linear programs: patterns for the dives, and the bound on the money.</summary>
    public void Relax()
    {
        if (IsRelaxed)
        {
            return;
        }

        IsRelaxed = true;
        using var master = new MasterProblem(Model, CostWeights.Blend(Model));
        foreach (var pattern in hand.Patterns())
        {
            master.Add(pattern);
        }

        var need = new Remainder(Model).Need;
        ColumnGeneration.Run(Model, master, pricer, CostWeights.Blend(Model), need, clock, 200, _ => true, hand.Keep);

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
            ColumnGeneration.Run(Model, master, pricer, CostWeights.MoneyOnly, need, clock, 200, _ => true, hand.Keep);

            Bound = Math.Max(Bound, program.Bound(master, Purchases.Free(Model), Best.Money));
            boundDuals.Add(program.Duals.Rows);
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
        if (boundDuals.Count > 0)
        {
            OpenCore(PaidCore.Priced(Model, boundDuals[^1]));
        }

        if (SpendsAsCore)
        {
            // The money is the core's affair, and dives for the worth can wait until that is settled.
            return;
        }

        Sharpen();
        if (isSettled || !IsProved)
        {
            DiveTwice(0);
        }
    }

    /// <summary>Whether the best plan spends no more than its paid core does: whoever spends less, spends less on that.</summary>
    public bool SpendsAsCore => core.IsAllThatIsSpent;

    /// <summary>Where only a small part of the component costs money: that part by itself.</summary>
    private void OpenCore(IReadOnlySet<string> priced)
    {
        if (!IsProved && core.Open(priced))
        {
            TakeCore();
        }
    }

    /// <summary>Whether there are so many boards that linear programs over them take seconds.</summary>
    public bool IsHuge => Model.Boards.Count >= ManyBoards;

    /// <summary>Where linear programs take seconds, what only bought boards can make is searched before them.</summary>
    /// <param name="known">What the component must cost for the whole to be no better than the plan at hand.</param>
    public void SearchCoreEarly(long known)
    {
        var until = clock.Elapsed + (clock.Left / EarlyShare);
        if (IsHuge && !core.IsOpen && Best is { IsComplete: true, Money: > 0 })
        {
            OpenCore(PaidCore.OnlyBought(Model));
        }

        for (var round = 0; round < EarlyRounds && core.IsUnsettled && RoundedBound < Math.Min(known, Best!.Money); round++)
        {
            if (clock.Elapsed > until)
            {
                clock.NoteCutShort();
                break;
            }

            core.Raise(Math.Min(known, Best.Money), (until - clock.Elapsed) / 2);
            core.Deepen(round);
            TakeCore();
        }
    }

    /// <summary>Takes over what the search of the core knows: its bound, and its plan with the rest made of what is left.</summary>
    private void TakeCore()
    {
        Bound = Math.Max(Bound, core.Bound);
        core.MakeWhole();
        improved();
    }

    /// <summary>Where few totals are possible: whether there is a plan for the least of them that the bound allows.</summary>
    private void Sharpen()
    {
        if (Best is not { IsComplete: true } best || IsProved || Bound <= 0 || clock.IsNearlyOver)
        {
            return;
        }

        var target = RoundedBound;
        if (leastTotal.IsWorthwhile(target, best.Money))
        {
            var (bound, solution) = leastTotal.Seek(hand.Patterns(), Bound, target, clock.Left / SharpenShare);
            Bound = Math.Max(Bound, bound);
            hand.Offer(solution);
            improved();
        }
    }

    /// <summary>Branches on the purchases until the bound reaches <paramref name="known"/> or a part of the time given is over: a smaller part where branching brought little.</summary>
    public void RaiseBound(long known, TimeSpan share)
    {
        if (core.IsUnsettled && !IsProved)
        {
            core.Raise(known, share);
            TakeCore();
        }
        else if (!IsProved && known > RoundedBound)
        {
            var gap = known - Bound;
            Bound = Math.Max(Bound, tree.Raise(hand.Patterns(), Bound, known, share * eagerness));
            eagerness = known - Bound > LittleProgress * gap ? Math.Max(LeastEagerness, eagerness / 2) : 1;
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

        if (core.IsUnsettled && !IsProved)
        {
            core.Deepen(round);
            TakeCore();
            if (IsProved || SpendsAsCore)
            {
                return;
            }
        }

        if (Best is { IsComplete: false } lacking)
        {
            hand.Offer(new Dive(Model, pricer, hand.Patterns(), clock, hand.Keep).Run(Best, round + 2, random));
            Enrich();
            hand.Offer(PoolProgram.Solve(
                Model, hand.Patterns(), new Remainder(Model), [], long.MaxValue, PoolGoal.Completeness, lacking, clock, TimeSpan.FromSeconds(1)));
        }

        if (round % 3 == 1 && !IsProved)
        {
            DiveTwice(round + 1);
        }

        var few = Model.Boards.Count <= FewBoards;
        if (round % 3 == 0 && !IsProved && hand.Count < (few ? MostForWholeOfFew : MostForWhole) && Best is { IsComplete: true } best)
        {
            Enrich();
            hand.Offer(PoolProgram.Solve(Model, hand.Patterns(), new Remainder(Model), [], best.Money, PoolGoal.Money, best, clock, few ? Shorter(TimeSpan.FromSeconds(2), clock.Left / 5) : TimeSpan.FromSeconds(1)));
        }

        Rebuild(RebuildsPerRound, PoolGoal.Money);
    }

    private static TimeSpan Shorter(TimeSpan one, TimeSpan other) => one < other ? one : other;

    private void Enrich()
    {
        var times = hand.Count < MostPatterns ? EnrichmentsPerRound : 0;
        hand.Keep(new Enrichment(Model, pricer, clock).Run(duals, boardDuals, new Remainder(Model), times, random));
    }

    /// <summary>What the paid core leaves to be made, so far made in haste, made better.</summary>
    public void MakeTheRest()
    {
        if (SpendsAsCore)
        {
            DiveTwice(0);
        }
    }

    /// <summary>Least worth for the same money.</summary>
    public void Polish()
    {
        MakeTheRest();
        Relay();
        for (var (round, before) = (0, (Solution?)null); round < MostPolishRounds && Best != before && Best is { IsComplete: true, Cuts.Count: > 0 } best && !clock.IsOver; round++)
        {
            before = best;
            hand.Offer(PoolProgram.Solve(Model, hand.Patterns(), new Remainder(Model), [], best.Money, PoolGoal.Worth, best, clock, TimeSpan.FromSeconds(1)));
            Rebuild(PolishRebuilds, PoolGoal.Worth);
            Relay();
        }
    }

    /// <summary>The least worth that a plan of this component uses up if it spends no more than so much, in minor units; null if there is no time to tell.</summary>
    /// <param name="mostMoney">The money.</param>
    /// <param name="time">How long it may take.</param>
    public double? BoundWorth(long mostMoney, TimeSpan time)
    {
        if (Model.Rows.Count == 0)
        {
            return 0;
        }

        if (worthBounds.TryGetValue(mostMoney, out var known))
        {
            return known;
        }

        // What there was no time for may be asked again with more.
        var bound = new WorthBound(Model, mostMoney).Of(hand.Patterns(), clock, time);
        if (bound is { } found)
        {
            worthBounds.Add(mostMoney, found);
        }

        return bound;
    }

    /// <summary>
    /// Where nothing is bought, a plan that uses up not much more than the least: by a linear program of few rounds and one dive through it, what that
    /// leaves to be made by the first plan's rule.
    /// </summary>
    public void Settle()
    {
        if (Best is { IsComplete: true, Money: 0, Cuts.Count: > 0 })
        {
            using (var master = new MasterProblem(Model, CostWeights.Blend(Model)))
            {
                foreach (var pattern in hand.Patterns())
                {
                    master.Add(pattern);
                }

                ColumnGeneration.Run(
                    Model, master, pricer, CostWeights.Blend(Model), new Remainder(Model).Need, clock, RoundsToSettle, _ => true, hand.Keep, thorough: false);
            }

            var dive = new Dive(Model, pricer, hand.Patterns(), clock, hand.Keep, RoundsPerSettledStep);
            hand.Offer(Mended(dive, dive.Run(null, 0, random), pricer, hand.Keep));
        }
    }

    private void Relay()
    {
        if (Best is { IsComplete: true } best)
        {
            hand.Offer(new Relaying(Model, pricer, clock).Run(best));
        }
    }

    private void Rebuild(int times, PoolGoal goal)
    {
        for (var n = 0; n < times && !clock.IsNearlyOver && (!IsProved || goal == PoolGoal.Worth) && Best is { IsComplete: true }; n++)
        {
            neighbourhoods.Rebuild(goal, duals, boardDuals);
        }
    }

    /// <summary>Two dives, each completed for the least total where few totals are possible, else with the integer program on what its last boards should make.</summary>
    private void DiveTwice(int discrepancies)
    {
        var (best, known) = (Best, hand.Patterns());
        var target = best is { IsComplete: true } && !IsProved && leastTotal.IsWorthwhile(RoundedBound, best.Money) ? RoundedBound : (long?)null;
        var most = best?.Cuts.Sum(cut => cut.Count) ?? 0;
        two.Run(n => (pricing, dice, found) =>
        {
            var met = new List<Pattern>();
            var dive = new Dive(Model, pricing, known, clock, Meet);
            var begun = n > 0 || SpendsAsCore ? core.Cuts : null;
            var dived = Mended(dive, dive.Run(discrepancies + n == 0 && core.Cuts is null ? null : best, discrepancies + n, dice, begun), pricing, Meet);
            if (target is { } least && new Completion(Model, clock).Run(dive.Cuts, most, least, [.. known, .. met]) is { } completed)
            {
                return [completed];
            }

            var beaten = dived is not null && dived.Beats(best) ? dived : best;
            return [dived, beaten is { IsComplete: true } && dive.Sound.Count > 0
                ? new Rebuilding(Model, pricing, [.. known, .. met], clock, found).Run(dive.Sound, beaten, PoolGoal.Money, dice)
                : null];

            void Meet(Pattern pattern)
            {
                met.Add(pattern);
                found(pattern);
            }
        });
    }

    /// <summary>Where a dive ended with something left to be made of which its prices knew no pattern, the first plan's rule makes that.</summary>
    private Solution? Mended(Dive dive, Solution? dived, PatternPricer pricing, Action<Pattern> found) =>
        dived is { IsComplete: false } && !clock.IsOver ? GreedyStart.Run(Model, pricing, clock, dive.Cuts, found) : dived;

    private void TakeBound(MasterProblem master, long[] need)
    {
        boundDuals.Add((double[])master.CoverDuals.Clone());
        var prices = PriceList.FromDuals(Model.Rows, master.CoverDuals, need, 0);
        Bound = Math.Max(Bound, SafeBound.Of(Model, pricer, prices));
    }
}
