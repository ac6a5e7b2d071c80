using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Pieces lie apart on their board, and the listed cuts make exactly them.</summary>
internal static class CutChecks
{
    public static void Run(AuditSheet sheet)
    {
        foreach (var board in sheet.Plan.Boards)
        {
            Places(sheet, board);
            Replay(sheet, board);
        }
    }

    private static void Places(AuditSheet sheet, BoardCut board)
    {
        var face = new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width);
        for (var a = 0; a < board.Pieces.Count; a++)
        {
            var at = board.Pieces[a].At;
            var inside = at.X >= face.X && at.Y >= face.Y && at.Right <= face.Right && at.Top <= face.Top
                && at.Length > Length.Zero && at.Width > Length.Zero;
            sheet.Require(inside, AuditRule.OnBoard, $"Piece {a + 1} of board {board.Number} at {at} does not lie on it.");
            for (var b = a + 1; b < board.Pieces.Count; b++)
            {
                Apart(sheet, board, at, board.Pieces[b].At);
            }
        }
    }

    private static void Apart(AuditSheet sheet, BoardCut board, Rect one, Rect other)
    {
        if (one.Overlaps(other))
        {
            sheet.Find(AuditRule.Overlap, $"Pieces at {one} and {other} of board {board.Number} overlap.");
            return;
        }

        var apartX = Length.Larger(one.X - other.Right, other.X - one.Right);
        var apartY = Length.Larger(one.Y - other.Top, other.Y - one.Top);
        sheet.Require(
            Length.Larger(apartX, apartY) >= sheet.Shop.Kerf, AuditRule.Kerf,
            $"Pieces at {one} and {other} of board {board.Number} have less than a kerf between them.");
    }

    private static void Replay(AuditSheet sheet, BoardCut board)
    {
        var left = new List<(Rect Rect, FirstCut? Last, int Runs)>
        {
            (new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width), null, 0),
        };
        for (var at = 0; at < board.Cuts.Count; at++)
        {
            var cut = board.Cuts[at];
            var index = left.FindIndex(piece => Divides(sheet.Shop.Kerf, cut, piece.Rect));
            if (cut.Order != at + 1 || index < 0)
            {
                sheet.Find(AuditRule.Guillotine, $"Cut {cut.Order} of board {board.Number} at {cut.Kerf} does not go right through one piece.");
                return;
            }

            var (rect, last, runs) = left[index];
            left.RemoveAt(index);
            left.AddRange(Halves(rect, cut).Select(half => (half, (FirstCut?)cut.Direction, last == cut.Direction ? runs : runs + 1)));
        }

        var made = left.Select(piece => piece.Rect).OrderBy(Key).ToList();
        var listed = board.Pieces.Select(piece => piece.At).OrderBy(Key).ToList();
        sheet.Require(made.SequenceEqual(listed), AuditRule.Guillotine, $"The cuts of board {board.Number} do not leave the pieces that are listed.");
        if (board.Defects.Count == 0)
        {
            // A cut that only trims adds one change of direction to those of the pattern.
            var most = sheet.Shop.Recut ? 4 : 3;
            var wanted = board.Pieces.Where(piece => piece is PartPiece or StripPiece).Select(piece => piece.At).ToHashSet();
            sheet.Require(
                left.TrueForAll(piece => piece.Runs <= most || !wanted.Contains(piece.Rect)), AuditRule.Stages,
                $"A piece of board {board.Number} takes more than {most} changes of cutting direction.");
        }
    }

    private static bool Divides(Length kerf, SawCut cut, Rect rect)
    {
        var (blade, low, high, spans) = cut.Direction == FirstCut.Crosscut
            ? (cut.Kerf.Length, cut.Kerf.X - rect.X, rect.Right - cut.Kerf.Right, cut.Kerf.Y == rect.Y && cut.Kerf.Width == rect.Width)
            : (cut.Kerf.Width, cut.Kerf.Y - rect.Y, rect.Top - cut.Kerf.Top, cut.Kerf.X == rect.X && cut.Kerf.Length == rect.Length);
        var runsOut = low == Length.Zero || high == Length.Zero;
        return spans && low >= Length.Zero && high >= Length.Zero
            && (blade == kerf || (blade > Length.Zero && blade < kerf && runsOut));
    }

    private static IEnumerable<Rect> Halves(Rect rect, SawCut cut)
    {
        var halves = cut.Direction == FirstCut.Crosscut
            ? new[] { rect with { Length = cut.Kerf.X - rect.X }, rect with { X = cut.Kerf.Right, Length = rect.Right - cut.Kerf.Right } }
            : [rect with { Width = cut.Kerf.Y - rect.Y }, rect with { Y = cut.Kerf.Top, Width = rect.Top - cut.Kerf.Top }];
        return halves.Where(half => half.Length > Length.Zero && half.Width > Length.Zero);
    }

    private static (long, long, long, long) Key(Rect rect) => (rect.X.Ticks, rect.Y.Ticks, rect.Length.Ticks, rect.Width.Ticks);
}
