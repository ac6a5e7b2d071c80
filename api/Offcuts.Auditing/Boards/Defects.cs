using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>No blank, strip or kept leftover lies over a recorded defect, whether the plan shows the defect or not.</summary>
internal static class Defects
{
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        foreach (var piece in cut.Board.Pieces.Where(piece => piece is not WastePiece))
        {
            foreach (var defect in cut.DefectAreas.Where(piece.At.Overlaps))
            {
                scope.Findings.Add(AuditRule.Defects, $"Board {cut.Board.Number}: {piece} lies over the defect at {defect}.");
            }
        }
    }
}
