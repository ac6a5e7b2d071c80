using Offcuts.Domain;
using Offcuts.Planning.Layout;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>The whole search: over the choices of species and their components, and again with less where not everything can be had.</summary>
/// <param name="problem">What to build from what.</param>
/// <param name="limits">How long to search.</param>
/// <param name="progress">Told of every better plan and bound.</param>
/// <param name="clock">How much of the time is left.</param>
/// <param name="enough">A bound on the money that is as good as a proof, because a plan that spends so much is not wanted.</param>
/// <param name="boundsWorthTo">The most money for which the worth is bounded, where the limits ask for that.</param>
internal sealed class PlanSearch(
    PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, SearchClock clock, long enough = long.MaxValue,
    long boundsWorthTo = long.MaxValue)
{
    /// <summary>The search ends by itself after so many rounds that brought nothing.</summary>
    private const int MostIdleRounds = 8;

    /// <summary>The part of the time left in which the worth is bounded.</summary>
    private const double WorthShare = 0.4;

    /// <summary>With so few choices the relaxation in which nothing need agree tells little.</summary>
    private const int FewScenarios = 3;

    /// <summary>The part of the time that is kept for what a paid core leaves.</summary>
    private const double RestShare = 0.12;
    private readonly ModelBuilder builder = new(problem);
    private readonly Dictionary<string, ComponentSearch> components = new(StringComparer.Ordinal);
    private readonly PaidCores cores = new(clock, limits.Seed);
    private List<ScenarioPlan> scenarios = [];

    // Choices for all of which no plan was found, though none is known to be impossible: what they would cost still bounds the money.
    private List<ScenarioPlan> doubtful = [];
    private ScenarioPlan? relaxed;
    private ScenarioPlan? winner;
    private (long Money, double Worth)? reported;
    private bool truncated;
    private TimeSpan firstPlan;

    /// <summary>The least worth that any plan for the winner's money uses up, in minor units; null where it is not known.</summary>
    public long? LeastWorth { get; private set; }

    /// <summary>Runs to the end or until time is up.</summary>
    public Plan Run()
    {
        var choices = new SpeciesChoices(problem);
        var listed = choices.List();
        truncated = choices.IsTruncated;
        if (limits.Effort != PlanEffort.Thorough && IsGoodAtFirst(listed[0]))
        {
            Settle();
            return Write(finished: !clock.IsOver && !clock.CutShort);
        }

        // The earlier plan's choice first; without one the order stays.
        scenarios = [.. listed.Select(Open).OrderByDescending(scenario => scenario.Components.Sum(component => component.PiecesKept))];
        Start();
        StartAgain();
        if (!IsGoodEnough)
        {
            Relax(choices);
            Dive();
        }

        if (limits.Effort == PlanEffort.Thorough)
        {
            Raise(share: 6);
            Deepen();
            LeastWorth = limits.BoundsWorth && winner!.Money <= boundsWorthTo ? BoundWorth() : null;
            Polish();
        }
        else
        {
            foreach (var component in winner?.Components ?? [])
            {
                component.MakeTheRest();
            }
        }

        Settle();
        return Write(finished: !clock.IsOver && !clock.CutShort);
    }

    /// <summary>
    /// The least worth that any plan for no more than the winner's money uses up, whatever it chooses: the least over the choices whose bounds on the money leave that
    /// open, or what holds for all choices together, whichever says more. Null where there are choices that are not listed, where something is missing (each choice then lacks
    /// what it lacks, and says nothing of plans that lack what the winner does), or where time is too short for both.
    /// </summary>
    private long? BoundWorth()
    {
        var open = scenarios.Concat(doubtful).Where(scenario => scenario.Bound <= winner!.Money).ToList();
        if (truncated || (winner!.MissingCount > 0 && scenarios.Count + doubtful.Count > 1))
        {
            return null;
        }

        // One bound for all choices is soon there, but lower.
        var end = clock.Elapsed + (clock.Left * WorthShare);
        var together = open.Count > 1 && relaxed is not null && relaxed.Bound <= winner!.Money ? BoundWorth(relaxed, (end - clock.Elapsed) / 2) : null;
        double? least = double.PositiveInfinity;
        foreach (var (at, scenario) in open.Index())
        {
            least = BoundWorth(scenario, (end - clock.Elapsed) / (open.Count - at)) is { } bound && least is { } known ? Math.Min(known, bound) : null;
            if (least is null)
            {
                break;
            }
        }

        return (least, together) is (null, null) ? null : (long)Math.Ceiling(Math.Max(least ?? double.NegativeInfinity, together ?? double.NegativeInfinity));
    }

    /// <summary>The same of one choice, of which each component may spend what the bounds of the others leave it.</summary>
    private double? BoundWorth(ScenarioPlan scenario, TimeSpan time)
    {
        var (end, sum) = (clock.Elapsed + time, 0.0);
        foreach (var (at, component) in scenario.Components.Index())
        {
            var share = (end - clock.Elapsed) / (scenario.Components.Count - at);
            if (share <= TimeSpan.Zero || component.BoundWorth(winner!.Money - (scenario.Bound - component.RoundedBound), share) is not { } bound)
            {
                return null;
            }

            sum += bound;
        }

        return sum;
    }

    /// <summary>The least money that any choice of species could do with.</summary>
    private long Bound()
    {
        var least = truncated ? 0 : scenarios.Concat(doubtful).Min(scenario => scenario.Bound);
        var bound = Math.Max(least, relaxed?.Bound ?? 0);
        return winner is null ? bound : Math.Min(bound, winner.Money);
    }

    /// <summary>Whether a search that is not thorough has nothing left to find out: no plan buys less than nothing.</summary>
    private bool IsGoodEnough => limits.Effort switch
    {
        PlanEffort.Glance => true,
        PlanEffort.Quick or PlanEffort.Settled => winner is { Money: 0, MissingCount: 0 },
        _ => false,
    };

    /// <summary>The choice with most wood in stock alone, before any other is even opened.</summary>
    private bool IsGoodAtFirst(Scenario first)
    {
        scenarios = [Open(first)];
        Start();
        return IsGoodEnough;
    }

    private bool IsProved => winner is not null && Math.Min(winner.Money, enough) <= Bound();

    /// <summary>Scenarios that may still give the best plan, the most promising first.</summary>
    private List<ScenarioPlan> Contenders() => [.. scenarios
        .Where(scenario => scenario == winner || winner is null || scenario.Bound < winner.Money || MayReplace(scenario))
        .OrderBy(scenario => scenario.Bound)];

    /// <summary>Whether it is the best plan or may still become it for as much money, because it keeps a group to one batch.</summary>
    private bool MayReplace(ScenarioPlan scenario) => scenario == winner
        || (winner is not null && scenario.Scattered < winner.Scattered && scenario.Bound <= winner.Money);

    /// <summary>Components that two scenarios have in common are searched once.</summary>
    private ScenarioPlan Open(Scenario scenario)
    {
        var parts = Components.Split(scenario.Wanted, builder.Build(scenario.Wanted));
        return new ScenarioPlan(scenario, [.. parts.Select(part =>
        {
            if (!components.TryGetValue(part.Key, out var search))
            {
                search = new ComponentSearch(builder.Build(part), part, cores, clock, limits.Seed, Improved);
                components.Add(part.Key, search);
            }

            return search;
        })]);
    }

    /// <summary>First plans for every choice; the first choice gets one whatever the clock says.</summary>
    private void Start()
    {
        var whole = scenarios.ToList();
        for (var at = 0; at < scenarios.Count; at++)
        {
            if (at == 0 || (!clock.IsOver && !IsGoodEnough))
            {
                scenarios[at] = Started(scenarios[at]);
                PickWinner();
            }
        }

        var fewest = scenarios.Where(scenario => scenario.IsComplete).Min(scenario => scenario.MissingCount);
        doubtful = [.. whole.Where((plan, at) => scenarios[at].MissingCount > fewest && plan.MissingCount <= fewest)];
        scenarios.RemoveAll(scenario => scenario.MissingCount > fewest);
        winner = null;
        Improved();
    }

    private void StartAgain()
    {
        foreach (var component in winner?.Components ?? [])
        {
            component.StartAgain();
        }
    }

    /// <summary>Where boards and offers are too few for all that is wanted, plans for what they do suffice for.</summary>
    private ScenarioPlan Started(ScenarioPlan plan)
    {
        while (true)
        {
            foreach (var component in plan.Components.Where(component => component.Best is null))
            {
                component.Start();
            }

            // The greedy plan may merely have been clumsy: search before giving a part up.
            foreach (var component in plan.Components.Where(component => component.Best is not { IsComplete: true } && limits.Effort != PlanEffort.Glance))
            {
                component.Relax();
                component.FirstDives();
                for (var round = 0; round < 2 && component.MayLackLess && limits.Effort == PlanEffort.Thorough; round++)
                {
                    component.Deepen(round);
                }
            }

            if (plan.IsComplete)
            {
                return plan;
            }

            plan = Open(plan.Components.Aggregate(plan.Scenario, Shortage.TakeOut));
        }
    }

    private void Relax(SpeciesChoices choices)
    {
        foreach (var scenario in CheapestFirst())
        {
            foreach (var component in scenario.Components)
            {
                component.SearchCoreEarly(MostFor(scenario, component));
            }
        }

        // Few choices say as much one by one, where it takes seconds to ask.
        var isFew = scenarios.Count <= FewScenarios && scenarios.Exists(scenario => scenario.Components.Any(component => component.IsHuge));
        if (scenarios.Count > 1 && !isFew && scenarios.TrueForAll(scenario => scenario.Scenario.Missing.Count == 0))
        {
            var open = Open(choices.Relaxed());
            foreach (var component in open.Components)
            {
                Relax(component);
            }

            relaxed = open;
        }

        // The cheapest first: what it costs may rule the others out.
        foreach (var scenario in CheapestFirst())
        {
            foreach (var component in IsProved && !MayReplace(scenario) ? [] : scenario.Components)
            {
                Relax(component);
            }
        }
    }

    /// <summary>Choices of species have most patterns in common: what is met for one need not be found again for the next.</summary>
    private void Relax(ComponentSearch component)
    {
        foreach (var other in component.IsRelaxed ? [] : components.Values.Where(other => other.IsRelaxed))
        {
            component.Borrow(other);
        }

        component.Relax();
    }

    private void Dive()
    {
        foreach (var scenario in Contenders())
        {
            foreach (var component in scenario.Components.Where(_ => MayReplace(scenario) || !IsProved))
            {
                component.FirstDives();
            }
        }
    }

    private List<ScenarioPlan> CheapestFirst() => [.. scenarios.OrderBy(scenario => scenario.IsComplete ? scenario.Money : long.MaxValue)];

    /// <summary>What a component must cost for the whole to be no better than the plan at hand.</summary>
    private long MostFor(ScenarioPlan scenario, ComponentSearch component) =>
        winner is null ? long.MaxValue : Math.Min(winner.Money, enough) - (scenario.Bound - component.RoundedBound);

    /// <summary>Raises the bounds, each for at most that part of the time left.</summary>
    private void Raise(int share)
    {
        foreach (var scenario in Contenders())
        {
            foreach (var component in scenario.Components.Where(component => !IsProved && component.Best is not null))
            {
                component.RaiseBound(Math.Min(MostFor(scenario, component), component.Best!.Money), clock.Left / share);
            }
        }
    }

    private void Deepen()
    {
        var idle = 0;
        for (var round = 0; idle < MostIdleRounds && !IsProved && !clock.IsNearlyOver && !IsTimeForTheRest(); round++)
        {
            var before = (winner?.Money, winner?.Worth, Bound());
            foreach (var component in Contenders().SelectMany(scenario => scenario.Components).Distinct().Where(component => !component.IsProved).ToList())
            {
                component.Deepen(round);
            }

            Raise(share: 8);
            idle = before == (winner?.Money, winner?.Worth, Bound()) ? idle + 1 : 0;
        }
    }

    /// <summary>Whether what the paid core of a component leaves to be made, so far made in haste, needs the time that is left.</summary>
    private bool IsTimeForTheRest()
    {
        var isTime = clock.Left < limits.Budget * RestShare && winner!.Components.Any(component => component.SpendsAsCore);
        if (isTime)
        {
            clock.NoteCutShort();
        }

        return isTime;
    }

    private void Polish()
    {
        foreach (var component in winner?.Components ?? [])
        {
            component.Polish();
        }
    }

    private void Settle()
    {
        foreach (var component in limits.Effort == PlanEffort.Settled ? winner?.Components ?? [] : [])
        {
            component.Settle();
        }
    }

    private void PickWinner()
    {
        foreach (var scenario in scenarios)
        {
            winner = scenario != winner && scenario.Beats(winner) ? scenario : winner;
        }
    }

    private void Improved()
    {
        PickWinner();
        if (winner is null)
        {
            return;
        }

        firstPlan = firstPlan == TimeSpan.Zero ? clock.Elapsed : firstPlan;
        var isNew = reported != (winner.Money, winner.Worth);
        reported = (winner.Money, winner.Worth);
        progress?.Invoke(new PlanProgress(
            clock.Elapsed, new Money(winner.Money), new Money(Bound()), isNew ? Write(finished: false) : null));
    }

    private Plan Write(bool finished) => PlanWriter.Write(
        problem, [.. winner!.Components.Select(component => (component.Model, component.Best!))], winner.Scenario.Missing, Bound(),
        new PlanRun(limits.Seed, limits.Budget, clock.Elapsed, firstPlan, finished, Planner.Version), LeastWorth);
}
