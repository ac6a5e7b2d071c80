using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Checks plans from the outside: it re-derives everything from the problem and the plan alone and shares no code with the planner.</summary>
public static class Auditor
{
    /// <summary>All that is wrong with a plan; empty for a sound one.</summary>
    public static IReadOnlyList<AuditFinding> Audit(PlanningProblem problem, Plan plan)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        throw new NotSupportedException("The auditor is being written.");
    }
}

/// <summary>One thing that is wrong with a plan.</summary>
/// <param name="Rule">The rule that is broken.</param>
/// <param name="Detail">Where and by how much.</param>
public sealed record AuditFinding(AuditRule Rule, string Detail);

/// <summary>The rules that every plan keeps.</summary>
public enum AuditRule
{
    /// <summary>Every piece lies on its board.</summary>
    OnBoard,
}
