using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>Rule 7: a leftover is one that the shop keeps. Waste holds no clear rectangle that it would keep.</summary>
internal static class Leftovers
{
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        foreach (var piece in cut.Board.Pieces)
        {
            if (piece is LeftoverPiece)
            {
                scope.Findings.Require(
                    Keeping.IsKept(scope, cut.Board, piece.At), AuditRule.Leftovers, $"Board {cut.Board.Number}: the shop does not keep the leftover at {piece.At}.");
            }
            else if (piece is WastePiece && Keeping.IsKept(scope, cut.Board, piece.At))
            {
                List<Rect> lost = [.. cut.DefectAreas.Concat(EndTrims.Areas(scope, cut)).Where(piece.At.Overlaps)];
                scope.Findings.Require(
                    !Clear(piece.At, lost).Any(clear => Keeping.IsKept(scope, cut.Board, clear)),
                    AuditRule.Leftovers, $"Board {cut.Board.Number}: the waste at {piece.At} holds a leftover worth keeping.");
            }
        }
    }

    /// <summary>
    /// Clear rectangles of which every other clear one is a part. A clear rectangle still is one when it is pushed left and down until it touches an edge or a
    /// defect; from each such corner they become the shorter the wider: a defect to the right of the corner limits either the length or the width.
    /// </summary>
    private static IEnumerable<Rect> Clear(Rect waste, List<Rect> defects)
    {
        foreach (var x in defects.Select(defect => defect.Right).Append(waste.X).Where(x => x < waste.Right).Distinct())
        {
            foreach (var y in defects.Select(defect => defect.Top).Append(waste.Y).Where(y => y < waste.Top).Distinct())
            {
                var top = waste.Top;
                foreach (var defect in defects.Where(defect => defect.Right > x && defect.Top > y).OrderBy(defect => defect.X))
                {
                    if (defect.X > x)
                    {
                        yield return new Rect(x, y, defect.X - x, top - y);
                    }

                    top = Length.Min(top, Length.Larger(y, defect.Y));
                }

                yield return new Rect(x, y, waste.Right - x, top - y);
            }
        }
    }
}
