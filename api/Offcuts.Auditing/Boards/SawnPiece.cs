using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>A piece at some point of the sawing, and the cut that divides it, if one does.</summary>
internal sealed class SawnPiece(Rect at)
{
    private IReadOnlyList<Piece> pieces = [];

    public Rect At => at;

    /// <summary>The direction of the cut that divides it.</summary>
    public FirstCut? Direction { get; private set; }

    /// <summary>From where to where the blade goes through it, along the board for a crosscut, across it for a rip.</summary>
    public (Length From, Length To) Blade { get; private set; }

    /// <summary>What the cut leaves.</summary>
    public IReadOnlyList<SawnPiece> Halves { get; private set; } = [];

    /// <summary>How many of the pieces that lie in it are wanted.</summary>
    public int Count(Predicate<Piece> isWanted) => Halves.Count == 0 ? pieces.Count(piece => isWanted(piece)) : Halves.Sum(half => half.Count(isWanted));

    public void Holds(IReadOnlyList<Piece> inside) => pieces = inside;

    /// <summary>Whether the cut goes right through this piece, with the right kerf.</summary>
    public bool CanBeCut(SawCut saw, Length kerf)
    {
        var (whole, cut) = Along(saw.Direction, saw.Kerf);
        var right = cut.Y == whole.Y && cut.Width == whole.Width && cut.X >= whole.X && cut.Right <= whole.Right;
        var inside = cut.X > whole.X || cut.Right < whole.Right;
        var runsOut = cut.X == whole.X || cut.Right == whole.Right;
        return right && inside && (cut.Length == kerf || (cut.Length < kerf && cut.Length > Length.Zero && runsOut));
    }

    /// <summary>Makes the cut.</summary>
    public IReadOnlyList<SawnPiece> Cut(SawCut saw)
    {
        var (whole, cut) = Along(saw.Direction, saw.Kerf);
        Divide(saw.Direction, whole with { Length = cut.X - whole.X }, whole with { X = cut.Right, Length = whole.Right - cut.Right });
        return Halves;
    }

    /// <summary>Divides it by straight cuts without a kerf until each part is one of the pieces; false if it cannot be.</summary>
    public bool FallApart(IReadOnlyList<Piece> inside)
    {
        Holds(inside);
        if (inside.Count == 1)
        {
            return inside[0].At == at;
        }

        foreach (var direction in new[] { FirstCut.Crosscut, FirstCut.Rip })
        {
            if (Gap(direction, inside) is { } x)
            {
                var (whole, _) = Along(direction, at);
                Divide(direction, whole with { Length = x - whole.X }, whole with { X = x, Length = whole.Right - x });
                return Halves.Count == 2
                    && Halves.All(half => half.FallApart([.. inside.Where(piece => half.At.Contains(piece.At))]));
            }
        }

        return false;
    }

    /// <summary>The first place at which a cut in the direction meets no piece.</summary>
    private Length? Gap(FirstCut direction, IReadOnlyList<Piece> inside)
    {
        var spans = inside.Select(piece => Along(direction, piece.At).Other).OrderBy(span => span.X).ToList();
        var reach = spans[0].Right;
        foreach (var span in spans.Skip(1))
        {
            if (span.X >= reach)
            {
                return reach;
            }

            reach = Length.Larger(reach, span.Right);
        }

        return null;
    }

    private void Divide(FirstCut direction, Rect before, Rect behind)
    {
        Direction = direction;
        Blade = (before.Right, behind.X);
        Halves = [.. new[] { before, behind }.Where(Rects.HasArea)
            .Select(half => new SawnPiece(direction == FirstCut.Crosscut ? half : half.Transposed()))];
    }

    /// <summary>This piece and another rectangle, turned so that the cut goes across X.</summary>
    private (Rect Whole, Rect Other) Along(FirstCut direction, Rect other) =>
        direction == FirstCut.Crosscut ? (at, other) : (at.Transposed(), other.Transposed());
}
