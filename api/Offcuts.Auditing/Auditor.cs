using Offcuts.Auditing.Boards;
using Offcuts.Auditing.Members;
using Offcuts.Auditing.Whole;
using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Checks plans from the outside: it re-derives everything from the problem and the plan alone and shares no code with the planner.</summary>
public static class Auditor
{
    /// <summary>
    /// All that is wrong with a plan; empty for a sound one. The problem must be a valid one; the plan may be broken in any way,
    /// it never makes the auditor throw.
    /// </summary>
    public static IReadOnlyList<AuditFinding> Audit(PlanningProblem problem, Plan plan)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(plan);
        var findings = new Findings();
        WellFormed.Check(plan, findings);
        if (findings.All.Count > 0)
        {
            return findings.All;
        }

        var scope = new AuditScope(problem, plan, findings);
        Identity.Check(scope);
        foreach (var cut in scope.Cuts)
        {
            CheckBoard(scope, cut);
        }

        GlueUpLists.Check(scope);
        Layers.Check(scope);
        OneSpecies.Check(scope);
        OneBatch.Check(scope);
        Demand.Check(scope);
        MissingReasons.Check(scope);
        Supply.Check(scope);
        Totals.Check(scope);
        Claims.Check(scope);
        return findings.All;
    }

    private static void CheckBoard(AuditScope scope, SourcedCut cut)
    {
        if (Covering.Check(scope, cut))
        {
            Sawing.Check(scope, cut);
        }

        Defects.Check(scope, cut);
        EndTrims.Check(scope, cut);
        Leftovers.Check(scope, cut);
        Extras.Check(scope, cut);
        foreach (var piece in cut.Board.Pieces)
        {
            if (piece is PartPiece part)
            {
                Blanks.Check(scope, cut, part);
            }
            else if (piece is StripPiece strip)
            {
                Strips.Check(scope, cut, strip);
            }
            else
            {
                scope.Findings.Require(
                    piece.Loss is null, AuditRule.Loss, $"Board {cut.Board.Number}: {piece} is not milled, so it loses nothing to warp.");
            }
        }
    }
}
