using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Host.Plans;

/// <summary>The planner for answers that keep no run: what it gives has passed the auditor.</summary>
internal sealed class AuditedPlanner(HostSettings settings, RejectedPlans rejected)
{
    /// <summary>Makes a plan.</summary>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.PlanRejected"/>: a fault of the product; what is needed to look into it is kept.</exception>
    public Plan Solve(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellationToken)
    {
        Solving solve = settings.Solve is { } other ? other.Invoke : Planner.Solve;
        var plan = solve(problem, limits, progress, cancellationToken);
        var findings = (settings.Audit ?? Auditor.Audit)(problem, plan);
        return findings.Count == 0 ? plan
            : throw new OffcutsException(ErrorCode.PlanRejected, rejected.Keep(Guid.NewGuid().ToString("N"), problem, plan, findings).Message);
    }
}
