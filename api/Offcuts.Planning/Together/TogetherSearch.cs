using System.Diagnostics;
using Offcuts.Domain;
using Offcuts.Planning.Bounds;
using Offcuts.Planning.Fitting;
using Offcuts.Planning.Ordering;

namespace Offcuts.Planning.Together;

/// <summary>
/// Plans several builds from one stock with one order for each supplier. First one after another, in several orders, each from what the one before
/// leaves: that is what planning together is compared with. The cheapest of these, as one plan, is where the search over all builds starts; the
/// answer is the better of it and of what that search finds, so that it never spends more than the builds one after another.
/// </summary>
internal sealed class TogetherSearch(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellation)
{
    /// <summary>The part of the time for the builds one after another.</summary>
    private const double SequenceShare = 0.45;

    /// <summary>With so many builds every order is tried; with more only some.</summary>
    private const int MostForAllOrders = 3;
    private readonly OrderTerms terms = new(problem);
    private readonly Stopwatch watch = Stopwatch.StartNew();
    private readonly Dictionary<string, Rack> racks = new(StringComparer.Ordinal);
    private bool isFinished = true;

    /// <summary>The plan of all builds.</summary>
    public Plan Run()
    {
        var orders = Orders();
        var steps = orders.SelectMany(order => Enumerable.Range(1, order.Count).Select(count => Key(order.Take(count)))).Distinct().Count();
        var budget = limits.Budget * SequenceShare / steps;
        var tried = orders.Select(order => (Order: order, Rack: After(order, budget))).ToList();
        var best = tried.Select(each => Merged(each.Rack, [])).MinBy(Rank)!;
        // Why something is missing is known only after the search over all builds.
        progress?.Invoke(new PlanProgress(watch.Elapsed, best.Outlay, Money.Zero, best.Missing.Count == 0 ? best : null));

        var joint = Planner.SolveOne(
            problem with { Builds = [], Earlier = problem.Earlier ?? new EarlierPlan(problem, best) }, limits with { Budget = Left(), BoundsWorth = false },
            inner => Report(inner, best), cancellation);
        isFinished &= joint.Run.Finished;
        var candidates = tried.Select(each => Merged(each.Rack, joint.Missing)).ToList();
        best = candidates.MinBy(Rank)!;
        var compared = tried.Select(each => Compared(each.Order, each.Rack)).ToList();
        var answer = Rank(joint).CompareTo(Rank(best)) <= 0 ? joint : Bounded(best, tried[candidates.IndexOf(best)].Rack.IsRecut, joint);
        return answer with
        {
            OneAfterAnother = compared,
            Run = new PlanRun(limits.Seed, limits.Budget, watch.Elapsed, joint.Run.FirstPlanAfter, isFinished, Planner.Version),
        };
    }

    private TimeSpan Left() => limits.Budget > watch.Elapsed ? limits.Budget - watch.Elapsed : TimeSpan.FromMilliseconds(1);

    private void Report(PlanProgress inner, Plan known)
    {
        var improved = inner.Improved is { } plan && Rank(plan).CompareTo(Rank(known)) < 0 ? plan : null;
        progress?.Invoke(inner with { Elapsed = watch.Elapsed, Cost = improved?.Outlay ?? known.Outlay, Bound = new Money(Math.Min(inner.Bound.MinorUnits, known.Outlay.MinorUnits)), Improved = improved });
    }

    private List<IReadOnlyList<string>> Orders()
    {
        var builds = problem.Builds;
        return builds.Count <= MostForAllOrders
            ? [.. Permutations([.. builds])]
            : [.. builds.Select((_, at) => (IReadOnlyList<string>)[.. builds.Skip(at), .. builds.Take(at)]).Append([.. builds.Reverse()])];
    }

    private static IEnumerable<IReadOnlyList<string>> Permutations(List<string> all) => all.Count == 0 ? [[]]
        : all.SelectMany(first => Permutations([.. all.Where(other => other != first)]).Select(rest => (IReadOnlyList<string>)[first, .. rest]));

    private static string Key(IEnumerable<string> order) => string.Join('\n', order);

    /// <summary>The rack after the builds of an order; what two orders begin with is planned once.</summary>
    private Rack After(IReadOnlyList<string> order, TimeSpan budget)
    {
        if (order.Count == 0)
        {
            return new Rack(problem);
        }

        if (!racks.TryGetValue(Key(order), out var after))
        {
            var before = After([.. order.SkipLast(1)], budget);
            var plan = Planner.SolveOne(before.For(JointDesign.Only(problem.Design, order[^1])), limits with { Budget = budget, BoundsWorth = false }, null, cancellation);
            isFinished &= plan.Run.Finished;
            racks.Add(Key(order), after = before.After(plan));
        }

        return after;
    }

    /// <summary>The builds of a rack as one plan. Why a part is missing is said as for all builds: to one the wood may be of the wrong kind only because another took the right one.</summary>
    private Plan Merged(Rack rack, IReadOnlyList<MissingPart> reasons) => With(Money.Zero, terms.Priced(rack.Joined(
        [.. rack.Plans.SelectMany(plan => plan.Missing).Select(part => reasons.FirstOrDefault(reason => reason.Name == part.Name) is { } reason
            ? reason with { Quantity = part.Quantity }
            : new MissingPart(part.Name, part.Quantity, MissingReason.TooFew))],
        rack.Plans[^1].Run)));

    private BuildOrder Compared(IReadOnlyList<string> order, Rack rack)
    {
        // Each build orders for itself, so every order but the first is a further stop.
        var trips = order.Zip(rack.Plans).Sum(each => SupplierOrders.Of(problem with { Design = JointDesign.Only(problem.Design, each.First) }, each.Second.Purchases).Count(one => !one.IsAnywhere));
        var stops = problem.Shop.SecondStop * Math.Max(0, trips - 1);
        return new BuildOrder(
            order, rack.Plans.Sum(plan => plan.MissingCount),
            new Money(rack.Plans.Sum(plan => plan.TotalCost.MinorUnits)),
            new Money(rack.Plans.Sum(plan => plan.WoodCost.MinorUnits + plan.ChargeCost.MinorUnits)) + stops);
    }

    /// <summary>
    /// The bound of the search over all builds holds for the plan too, unless that makes more or cuts a leftover again, which the search never does: then
    /// there is the bound by areas, which does not ask how boards are cut, if nothing is missing.
    /// </summary>
    private Plan Bounded(Plan plan, bool isRecut, Plan joint)
    {
        var holds = !isRecut && plan.Missing.All(missing => joint.Missing.Where(other => other.Name == missing.Name).Sum(other => other.Quantity) >= missing.Quantity);
        var bound = holds ? joint.WoodBound : plan.Missing.Count == 0 ? ByAreas(plan.Outlay) : Money.Zero;
        return With(bound < plan.Outlay ? bound : plan.Outlay, plan);
    }

    /// <summary>What has to be bought because the boards in stock are too few by area; where boards alone cost money, what whole boards can add up to.</summary>
    private Money ByAreas(Money known)
    {
        var least = DesignReach.LeastWoodCost(problem);
        return terms.Any ? least : new Money(AttainableTotals.RoundUp(least.MinorUnits, known.MinorUnits, problem.Offers.SelectMany(OfferSize.Of).Select(size => size.Price.MinorUnits)));
    }

    private static Plan With(Money bound, Plan plan) => plan with
    {
        WoodBound = bound,
        Status = plan.Missing.Count > 0 ? PlanStatus.Incomplete : bound == plan.Outlay ? PlanStatus.Proved : PlanStatus.Feasible,
    };

    /// <summary>What is missing of the first build, then of the second and so on, then the outlay, then the wood: where stock does not suffice, the first is served first.</summary>
    private Ranked Rank(Plan plan) => new(
        [.. problem.Builds.Select(plan.MissingCountOf)],
        plan.Outlay.MinorUnits, plan.WorthUsed.MinorUnits);

    private sealed record Ranked(IReadOnlyList<int> Missing, long Outlay, long Worth) : IComparable<Ranked>
    {
        public int CompareTo(Ranked? other)
        {
            var lacking = Missing.Zip(other!.Missing).Select(pair => pair.First.CompareTo(pair.Second)).FirstOrDefault(order => order != 0);
            return lacking != 0 ? lacking : Outlay != other.Outlay ? Outlay.CompareTo(other.Outlay) : Worth.CompareTo(other.Worth);
        }
    }
}
