using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Host.Plans;

/// <summary>The planner as the service uses it: no plan of it is kept, told or counted that has not passed the auditor.</summary>
internal sealed class AuditedPlanner(HostSettings settings, RejectedPlans rejected)
{
    /// <summary>The planner by itself. What it gives is to pass <see cref="Check"/> before anyone sees it.</summary>
    public Solving Search { get; } = settings.Solve ?? Planner.Solve;

    /// <summary>Makes a plan that has passed the auditor, for an answer that keeps no run.</summary>
    /// <exception cref="PlanRejectedException">A fault of the product; what is needed to look into it is kept.</exception>
    public Plan Solve(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellationToken) =>
        Check(Guid.NewGuid().ToString("N"), problem, Search(problem, limits, progress, cancellationToken));

    /// <summary>The plan, if it passes the auditor.</summary>
    /// <param name="id">What a reproduction is called by.</param>
    /// <param name="problem">What the plan was made from.</param>
    /// <param name="plan">The plan.</param>
    /// <exception cref="PlanRejectedException">A fault of the product; what is needed to look into it is kept.</exception>
    public Plan Check(string id, PlanningProblem problem, Plan plan)
    {
        var findings = (settings.Audit ?? Auditor.Audit)(problem, plan);
        return findings.Count == 0 ? plan : throw rejected.Keep(id, problem, plan, findings);
    }
}
