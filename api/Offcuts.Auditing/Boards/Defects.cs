using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// No blank or strip lies over a recorded defect unless its part or panel tolerates the kind, and no kept leftover lies over any, whether the plan
/// shows the defect or not.
/// </summary>
internal static class Defects
{
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        foreach (var piece in cut.Board.Pieces.Where(piece => piece is not WastePiece))
        {
            var tolerated = Tolerated(scope, piece);
            foreach (var defect in cut.Defects.Where(defect => piece.At.Overlaps(defect.Area) && !DefectKinds.Tolerates(tolerated, defect.Kind)))
            {
                scope.Findings.Add(AuditRule.Defects, $"Board {cut.Board.Number}: {piece} lies over the {defect.Kind} at {defect.Area}.");
            }
        }
    }

    private static IReadOnlyList<string> Tolerated(AuditScope scope, Piece piece) => piece switch
    {
        PartPiece part when scope.Parts.TryGetValue(part.Part, out var known) => known.Tolerates,
        StripPiece strip when scope.Panels.TryGetValue(strip.Panel, out var known) => known.Tolerates,
        _ => [],
    };
}
