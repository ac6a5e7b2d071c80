using Offcuts.Domain;

namespace Offcuts.Planning;

/// <summary>Makes a plan within limits, as <see cref="Planner.Solve"/> does.</summary>
public delegate Plan Solving(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellationToken);

/// <summary>A plan that was searched only until it was known whether its outlay is no more than a limit.</summary>
/// <param name="Plan">The best plan found.</param>
/// <param name="Bound">No plan for all parts has a smaller outlay.</param>
/// <param name="Limit">The limit.</param>
public sealed record Trial(Plan Plan, Money Bound, Money Limit)
{
    /// <summary>Whether all can be had, and within the limit.</summary>
    public bool IsWithin => Plan.Missing.Count == 0 && Plan.Outlay <= Limit;

    /// <summary>Whether no plan stays within the limit.</summary>
    public bool IsOut => Bound > Limit || LacksForSure(Plan);

    /// <summary>Whether a part cannot be had at all: more time finds none. Where boards are merely too few, a better plan may still have them all.</summary>
    public static bool LacksForSure(Plan plan) => plan.Missing.Any(missing => missing.Reason != MissingReason.TooFew);

    /// <summary>Searches until it is known, or until the time is up.</summary>
    /// <param name="problem">What to build from what.</param>
    /// <param name="limit">The limit.</param>
    /// <param name="isEnoughWithin">Whether any plan within the limit will do; else such a plan is made better until it is proved.</param>
    /// <param name="limits">How long to search at most.</param>
    /// <param name="solve">The planner.</param>
    /// <param name="cancellationToken">Ends it early.</param>
    public static Trial Run(
        PlanningProblem problem, Money limit, bool isEnoughWithin, PlanLimits limits, Solving solve, CancellationToken cancellationToken)
    {
        using var known = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var (bound, lacks) = (Money.Zero, false);
        var plan = solve(problem, limits, Look, known.Token);
        return new Trial(plan, plan.WoodBound > bound ? plan.WoodBound : bound, limit);

        void Look(PlanProgress progress)
        {
            lacks = progress.Improved is { } improved ? improved.Missing.Count > 0 : lacks;
            bound = progress.Bound > bound ? progress.Bound : bound;
            if (bound > limit || (!lacks && (progress.Cost <= bound || (isEnoughWithin && progress.Cost <= limit))))
            {
                known.Cancel();
            }
        }
    }
}
