using Offcuts.Domain;
using Offcuts.Planning.Search;

namespace Offcuts.Planning;

/// <summary>The cheapest of several ways to build a design, planned.</summary>
/// <param name="Way">Its place among the ways.</param>
/// <param name="Plan">Its plan.</param>
/// <param name="IsSure">Whether none of the others can cost less, nor as much and be preferred.</param>
public sealed record ChosenWay(int Way, Plan Plan, bool IsSure);

/// <summary>Plans several ways to build a design against each other: fewest missing first, then the money for wood and items, then their order.</summary>
public static class CheapestWay
{
    /// <summary>The least time for one way, so that each is at least looked at.</summary>
    private static readonly TimeSpan LeastTime = TimeSpan.FromMilliseconds(100);

    private static readonly Money Unlimited = new(long.MaxValue / 2);

    /// <summary>
    /// Half of the time goes to comparing the ways, each only until it is known to be no better than the best before; the rest to the plan of the
    /// cheapest.
    /// </summary>
    /// <param name="ways">The ways, the preferred first.</param>
    /// <param name="limits">Time for all of it.</param>
    /// <param name="solve">The planner.</param>
    /// <param name="chosen">Told which way is planned at last, before that begins.</param>
    /// <param name="progress">Told how far that plan is.</param>
    /// <param name="cancellationToken">Ends it early with the best so far.</param>
    public static ChosenWay Find(
        IReadOnlyList<PlanningProblem> ways, PlanLimits limits, Solving solve, Action<int> chosen, Action<PlanProgress>? progress, CancellationToken cancellationToken)
    {
        var clock = new SearchClock(limits.Budget, cancellationToken);
        var trials = Compare(ways, limits with { BoundsWorth = false }, solve, cancellationToken);
        var best = trials.Index().Where(trial => trial.Item is not null).MinBy(trial => Rank(trial.Item!.Plan, trial.Index)).Index;
        chosen(best);
        var plan = trials[best]!.Plan;
        var left = clock.Left > LeastTime ? clock.Left : LeastTime;
        var last = solve(ways[best], limits with { Budget = left }, progress, cancellationToken);
        plan = Rank(last, 0).CompareTo(Rank(plan, 0)) <= 0 ? last : plan;
        return new ChosenWay(best, plan, plan.Missing.Count == 0 && trials.Index().All(trial => trial.Index == best || IsNoBetter(trial.Item, trial.Index)));

        bool IsNoBetter(Trial? trial, int way) => trial is not null
            && (Trial.LacksForSure(trial.Plan) || trial.Bound + trial.Plan.ItemCost > Cost(plan) || (way > best && trial.Bound + trial.Plan.ItemCost == Cost(plan)));
    }

    private static Trial?[] Compare(IReadOnlyList<PlanningProblem> ways, PlanLimits limits, Solving solve, CancellationToken cancellationToken)
    {
        var trials = new Trial?[ways.Count];
        var clock = new SearchClock(limits.Budget / 2, cancellationToken);
        Plan? best = null;
        for (var way = 0; way < ways.Count && (way == 0 || !cancellationToken.IsCancellationRequested); way++)
        {
            var share = clock.Left / (ways.Count - way);
            // A later way must be cheaper.
            var limit = best is { Missing.Count: 0 } ? new Money(Cost(best).MinorUnits - 1) - ways[way].Design.ItemCost : Unlimited;
            trials[way] = Trial.Run(ways[way], limit, isEnoughWithin: false, limits with { Budget = share > LeastTime ? share : LeastTime }, solve, cancellationToken);
            best = best is null || Rank(trials[way]!.Plan, 0).CompareTo(Rank(best, 0)) < 0 ? trials[way]!.Plan : best;
        }

        AskAgain(ways, trials, limits, clock, solve, cancellationToken);
        return trials;
    }

    /// <summary>A way before the best that may still cost as little is preferred to it: the time that is left is for looking whether it does.</summary>
    private static void AskAgain(
        IReadOnlyList<PlanningProblem> ways, Trial?[] trials, PlanLimits limits, SearchClock clock, Solving solve, CancellationToken cancellationToken)
    {
        var (_, total, winner) = trials.Index().Where(trial => trial.Item is not null).Min(trial => Rank(trial.Item!.Plan, trial.Index));
        for (var way = 0; way < winner && clock.Left > LeastTime && trials[winner]!.Plan.Missing.Count == 0; way++)
        {
            var limit = new Money(total) - ways[way].Design.ItemCost;
            if (trials[way] is not { } before || before.Bound > limit || Trial.LacksForSure(before.Plan))
            {
                continue;
            }

            var again = Trial.Run(ways[way], limit, isEnoughWithin: true, limits with { Budget = clock.Left }, solve, cancellationToken);
            if (again.IsWithin)
            {
                trials[way] = again;
                return;
            }
        }
    }

    private static (int Missing, long Cost, int Way) Rank(Plan plan, int way) => (plan.MissingCount, Cost(plan).MinorUnits, way);

    // What further stops count is in the bound, so it is in what it is compared with.
    private static Money Cost(Plan plan) => plan.Outlay + plan.ItemCost;
}
