using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>
/// What the plan says of its own quality agrees with itself: 0 &lt;= bound &lt;= cost; incomplete exactly if something is missing;
/// else proved exactly if the bound equals the cost. Whether the bound itself is right cannot be seen from the plan.
/// </summary>
internal static class Claims
{
    public static void Check(AuditScope scope)
    {
        var plan = scope.Plan;
        scope.Findings.Require(
            plan.WoodBound >= Money.Zero && plan.WoodBound <= plan.WoodCost,
            AuditRule.Bound, $"The bound is {plan.WoodBound.MinorUnits} minor units, the wood costs {plan.WoodCost.MinorUnits}.");
        var status = plan.Missing.Count > 0 ? PlanStatus.Incomplete
            : plan.WoodBound == plan.WoodCost ? PlanStatus.Proved
            : PlanStatus.Feasible;
        scope.Findings.Require(plan.Status == status, AuditRule.Status, $"The plan is called {plan.Status}, it is {status}.");
    }
}
