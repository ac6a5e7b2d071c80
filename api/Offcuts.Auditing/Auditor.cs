using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Checks plans from the outside: it re-derives everything from the problem and the plan alone and shares no code with the planner.</summary>
public static class Auditor
{
    /// <summary>All that is wrong with a plan; empty for a sound one. Never throws for a plan, however broken.</summary>
    public static IReadOnlyList<AuditFinding> Audit(PlanningProblem problem, Plan plan)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        var sheet = new AuditSheet(problem, plan);
        foreach (var check in new Action<AuditSheet>[]
        {
            BoardChecks.Run, CutChecks.Run, PieceChecks.Run, PanelChecks.Run, DemandChecks.Run, MissingChecks.Run, TotalChecks.Run,
        })
        {
            try
            {
                check(sheet);
            }
            catch (OverflowException)
            {
                sheet.Find(AuditRule.Arithmetic, "A size or a sum is too large to be counted.");
            }
        }

        return sheet.Findings;
    }
}
