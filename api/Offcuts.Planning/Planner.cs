using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

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
        return new PlanSearch(problem with { Stock = CountedStock.Of(problem) }, limits, progress, new SearchClock(limits.Budget, cancellationToken)).Run();
    }
}
