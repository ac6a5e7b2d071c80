using Offcuts.Domain;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Ordering;

/// <summary>
/// Plans where suppliers ask more than their prices. From which suppliers something is bought, and which price steps are reached, is a choice; given
/// it, delivery, further stops and the price of a unit are fixed, and what is left is the wood. Each choice that its bound does not rule out is
/// planned by itself, the one with the least bound first (a Benders-like split with the choices listed, because suppliers are few).
/// </summary>
internal sealed class OrderSearch(OrderTerms terms, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellation)
{
    /// <summary>
    /// A board of a supplier that is not chosen counts so many times the best outlay more: then even a third of one in a linear program is too much, and
    /// the sums of prices are still exact (see <see cref="Pricing.PriceList"/>).
    /// </summary>
    private const int TooDear = 3;
    private const int LeastSurcharge = 1_000;

    /// <summary>The part of the time for the plan of the widest choice, whose bound holds for all others.</summary>
    private const double FirstShare = 0.4;

    /// <summary>The part of the time left that another choice gets.</summary>
    private const double Share = 1.0 / 3;
    private readonly SearchClock clock = new(limits.Budget, cancellation);
    private readonly List<(OrderChoice Choice, Plan Plan)> planned = [];
    private IReadOnlyList<OrderChoice> choices = [];
    private bool isTruncated;
    private bool isCutShort;
    private Plan? best;

    /// <summary>Runs until no choice can be better, or time is up.</summary>
    public Plan Run()
    {
        choices = terms.Choices(out isTruncated);
        Solve(terms.Widest, FirstShare);
        while (Next() is { } choice && !clock.IsOver)
        {
            Solve(choice, Share);
        }

        return Finished(best!, finished: !isCutShort && !clock.CutShort);
    }

    /// <summary>The choice not yet planned that may be the best.</summary>
    private OrderChoice? Next() => choices.Where(choice => planned.TrueForAll(each => !IsSame(each.Choice, choice)))
        .Select(choice => (Choice: choice, Least: Least(choice))).Where(each => each.Least < best!.Outlay.MinorUnits)
        .OrderBy(each => each.Least).ThenBy(each => each.Choice.Suppliers.Count).Select(each => each.Choice).FirstOrDefault();

    private void Solve(OrderChoice choice, double share)
    {
        var own = terms.Problem with { Offers = choice.Offers(terms, new Money(Math.Max(LeastSurcharge, TooDear * (best?.Outlay.MinorUnits ?? 0)))) };
        var budget = clock.Left * share;
        var enough = best is null ? long.MaxValue : Math.Max(0, best.Outlay.MinorUnits - terms.Fixed(choice));
        var plan = new PlanSearch(own, limits with { Budget = budget }, Report, new SearchClock(budget, cancellation), enough, boundsWorthTo: 0).Run();
        isCutShort |= !plan.Run.Finished;
        planned.Add((choice, plan));
        Offer(plan);
        progress?.Invoke(new PlanProgress(clock.Elapsed, best!.Outlay, Bound(best), null));
    }

    private void Report(PlanProgress inner)
    {
        if (inner.Improved is { } plan && Offer(plan))
        {
            progress?.Invoke(new PlanProgress(clock.Elapsed, best!.Outlay, Bound(best), Finished(best, finished: false)));
        }
    }

    private bool Offer(Plan plan)
    {
        var priced = terms.Priced(plan);
        var order = best is null ? -1 : Rank(priced).CompareTo(Rank(best));

        // A plan that was reported on the way comes again at the end of its search, with what is known of its worth.
        best = order < 0 || (order == 0 && priced.WorthBound is not null) ? priced : best;
        return order < 0;
    }

    private static (int Missing, long Outlay, long Worth) Rank(Plan plan) => (
        plan.MissingCount, plan.Outlay.MinorUnits, plan.WorthUsed.MinorUnits);

    /// <summary>No plan of a choice that makes what the best plan makes has a smaller outlay.</summary>
    private long Least(OrderChoice choice) => terms.LeastOutlay(choice, planned.Where(each => each.Choice.Covers(choice) && MakesNoMore(each.Plan, best!))
        .Select(each => each.Plan.WoodBound.MinorUnits).DefaultIfEmpty(0).Max());

    private Money Bound(Plan plan)
    {
        var least = choices.Select(Least).DefaultIfEmpty(0).Min();
        // Of choices that are not listed only the wood of the widest is known.
        var unlisted = isTruncated ? planned.Where(each => MakesNoMore(each.Plan, plan)).Select(each => each.Choice).Where(choice => IsSame(choice, terms.Widest))
            .Select(_ => planned[0].Plan.WoodBound.MinorUnits).DefaultIfEmpty(0).Max() : long.MaxValue;
        return new Money(Math.Min(plan.Outlay.MinorUnits, Math.Min(least, unlisted)));
    }

    // What a plan leaves out it does not pay for: its bound says nothing of plans that make less.
    private static bool MakesNoMore(Plan plan, Plan other) => other.Missing.All(missing =>
        plan.Missing.Where(each => each.Name == missing.Name).Sum(each => each.Quantity) >= missing.Quantity);

    private static bool IsSame(OrderChoice one, OrderChoice other) => one.Covers(other) && other.Covers(one);

    private Plan Finished(Plan plan, bool finished)
    {
        var bound = Bound(plan);
        return plan with
        {
            WoodBound = bound,
            Status = plan.Missing.Count > 0 ? PlanStatus.Incomplete : bound == plan.Outlay ? PlanStatus.Proved : PlanStatus.Feasible,
            Run = new PlanRun(limits.Seed, limits.Budget, clock.Elapsed, planned.Count == 0 ? clock.Elapsed : planned[0].Plan.Run.FirstPlanAfter, finished, Planner.Version),
        };
    }
}
