using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// A leftover is of at least the keep size in thickness, in width across and in length along the board. Waste holds no clear rectangle of the
/// keep size.
/// </summary>
internal static class Leftovers
{
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        var keep = scope.Problem.Shop.Keep;
        foreach (var piece in cut.Board.Pieces)
        {
            var size = new Dimensions(cut.Board.Size.Thickness, piece.At.Width, piece.At.Length);
            if (piece is LeftoverPiece)
            {
                scope.Findings.Require(
                    Worth.IsKept(size, keep), AuditRule.Leftovers, $"Board {cut.Board.Number}: the leftover at {piece.At} is too small to keep.");
            }
            else if (piece is WastePiece && Worth.IsKept(size, keep))
            {
                scope.Findings.Require(
                    !HoldsClear(piece.At, keep, [.. cut.DefectAreas.Concat(EndTrims.Areas(scope, cut)).Where(piece.At.Overlaps)]),
                    AuditRule.Leftovers, $"Board {cut.Board.Number}: the waste at {piece.At} holds a leftover worth keeping.");
            }
        }
    }

    /// <summary>
    /// Whether a rectangle of the keep size fits clear of the defects: if one does, it still does when pushed left and down until it touches
    /// an edge or a defect, so only those places are tried.
    /// </summary>
    private static bool HoldsClear(Rect waste, Dimensions keep, List<Rect> defects)
    {
        var lefts = defects.Select(defect => defect.Right).Append(waste.X).Distinct();
        var lows = defects.Select(defect => defect.Top).Append(waste.Y).Distinct().ToList();
        return lefts.Any(x => lows.Exists(y =>
        {
            var place = new Rect(x, y, keep.Length, keep.Width);
            return waste.Contains(place) && !defects.Exists(place.Overlaps);
        }));
    }
}
