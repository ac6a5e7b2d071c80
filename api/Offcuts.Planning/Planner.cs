using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Ordering;
using Offcuts.Planning.Search;
using Offcuts.Planning.Sensitivity;
using Offcuts.Planning.Together;

namespace Offcuts.Planning;

/// <summary>Finds cut plans.</summary>
public static class Planner
{
    /// <summary>Version of the search, recorded with every plan.</summary>
    public const string Version = "1";

    /// <summary>
    /// The best plan found within the limits. Parts that cannot be had are listed as missing; a plan always comes back.
    /// </summary>
    /// <param name="problem">What to build from what.</param>
    /// <param name="limits">How long to search.</param>
    /// <param name="progress">Told of every better plan and bound, on the calling thread.</param>
    /// <param name="cancellationToken">Ends the search early with the best plan so far.</param>
    public static Plan Solve(
        PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(limits);
        problem = problem with { Stock = CountedStock.Of(problem) };
        return problem.Builds.Count > 1
            ? new TogetherSearch(problem, limits, progress, cancellationToken).Run()
            : SolveOne(problem, limits, progress, cancellationToken);
    }

    /// <summary>What one more board in stock would save of a plan, verified by planning with it; the boards that save most first.</summary>
    /// <param name="problem">What the plan was made from.</param>
    /// <param name="plan">The plan; sound for the problem.</param>
    /// <param name="limits">How long to search in all.</param>
    /// <param name="most">How many boards are tried.</param>
    /// <param name="solve">Makes the plans with them: the planner, or one that checks what it makes.</param>
    /// <param name="cancellationToken">Ends the search early with what was found so far.</param>
    public static IReadOnlyList<WorthHaving> WorthHaving(
        PlanningProblem problem, Plan plan, PlanLimits limits, int most, Solving solve, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(solve);
        return new PriceSensitivity(problem, plan, limits, solve, cancellationToken).Find(most);
    }

    /// <summary>The best plan found for one build, of boards whose sizes are counted as they surely are.</summary>
    internal static Plan SolveOne(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellationToken)
    {
        var terms = new OrderTerms(problem);
        return terms.Any
            ? new OrderSearch(terms, limits, progress, cancellationToken).Run()
            : new PlanSearch(problem, limits, progress, new SearchClock(limits.Budget, cancellationToken)).Run();
    }
}
