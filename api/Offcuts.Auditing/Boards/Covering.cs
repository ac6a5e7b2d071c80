using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>Pieces and saw cuts lie on the board, do not overlap and cover it exactly: their areas add up to the board's.</summary>
internal static class Covering
{
    /// <summary>Whether all three hold.</summary>
    public static bool Check(AuditScope scope, SourcedCut cut)
    {
        var before = scope.Findings.All.Count;
        var rects = cut.Board.Pieces.Select(piece => (At: piece.At, Least: 1L)).Concat(cut.Board.Cuts.Select(saw => (At: saw.Kerf, Least: 0L))).ToList();
        foreach (var (rect, least) in rects)
        {
            // A saw without a kerf leaves cuts without area; a piece always has one.
            scope.Findings.Require(
                cut.Face.Contains(rect) && rect.Length.Ticks >= least && rect.Width.Ticks >= least,
                AuditRule.OnBoard, $"Board {cut.Board.Number}: {rect} is not a place on its face.");
        }

        if (scope.Findings.All.Count == before)
        {
            CheckOverlap(scope.Findings, cut.Board.Number, [.. rects.Select(entry => entry.At)]);
            var covered = rects.Aggregate(Int128.Zero, (sum, entry) => sum + entry.At.Area.SquareTicks);
            scope.Findings.Require(
                covered == cut.Face.Area.SquareTicks, AuditRule.Coverage,
                $"Board {cut.Board.Number}: pieces and cuts cover {covered} square ticks of {cut.Face.Area.SquareTicks}.");
        }

        return scope.Findings.All.Count == before;
    }

    private static void CheckOverlap(Findings findings, int number, List<Rect> rects)
    {
        // From left to right, each with those that begin before it ends.
        rects.Sort((a, b) => a.X.CompareTo(b.X));
        for (var i = 0; i < rects.Count; i++)
        {
            for (var j = i + 1; j < rects.Count && rects[j].X < rects[i].Right; j++)
            {
                findings.Require(
                    !rects[i].Overlaps(rects[j]), AuditRule.Overlap, $"Board {number}: {rects[i]} and {rects[j]} overlap.");
            }
        }
    }
}
