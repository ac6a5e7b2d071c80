using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>
/// What the plan says of its own quality agrees with itself: 0 &lt;= bound &lt;= outlay; incomplete exactly if something is missing;
/// else proved exactly if the bound equals the outlay. Whether the bound itself is right cannot be seen from the plan.
/// </summary>
internal static class Claims
{
    public static void Check(AuditScope scope)
    {
        var plan = scope.Plan;
        var outlay = plan.Charges.Aggregate(plan.WoodCost + plan.StopCost, (sum, charge) => sum + charge.Delivery + charge.TopUp);
        scope.Findings.Require(
            plan.WoodBound >= Money.Zero && plan.WoodBound <= outlay,
            AuditRule.Bound, $"The bound is {plan.WoodBound.MinorUnits} minor units, the outlay {outlay.MinorUnits}.");
        var status = plan.Missing.Count > 0 ? PlanStatus.Incomplete
            : plan.WoodBound == outlay ? PlanStatus.Proved
            : PlanStatus.Feasible;
        scope.Findings.Require(plan.Status == status, AuditRule.Status, $"The plan is called {plan.Status}, it is {status}.");
    }
}
