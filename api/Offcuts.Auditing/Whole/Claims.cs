using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>
/// What the plan says of its own quality agrees with itself: 0 &lt;= bound &lt;= outlay; incomplete exactly if something is missing;
/// else proved exactly if the bound equals the outlay; a bound on the worth is no more than what is used up, and none where several builds are planned together.
/// Whether the bounds themselves are right cannot be seen from the plan. (<see cref="Totals"/> adds up what is consumed and returned.)
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
        if (plan.WorthBound is { } least)
        {
            // In wide sums: a plan may claim anything.
            var used = (Int128)plan.WorthConsumed.MinorUnits - plan.WorthReturned.MinorUnits;
            scope.Findings.Require(
                least.MinorUnits <= used, AuditRule.Bound, $"The bound on the worth is {least.MinorUnits} minor units, the plan uses up {used}.");
            scope.Findings.Require(scope.Problem.Builds.Count <= 1, AuditRule.Bound, $"The bound on the worth is {least.MinorUnits}, but for several builds none is known.");
        }

        scope.Findings.Require(plan.Status == status, AuditRule.Status, $"The plan is called {plan.Status}, it is {status}.");
    }
}
