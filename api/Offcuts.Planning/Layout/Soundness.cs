using Offcuts.Domain;

namespace Offcuts.Planning.Layout;

/// <summary>
/// What must stay so when pieces of a board move: none comes to lie over a defect or a trimmed end where it did not before (it may have been
/// tolerated there), and waste large enough to be kept does not move away from the defects that make it waste.
/// </summary>
internal sealed class Soundness
{
    private readonly SawnBoard board;
    private readonly HashSet<(Piece Piece, Rect Lost)> over;
    private readonly List<Rect> wastes;

    public Soundness(SawnBoard board)
    {
        this.board = board;
        over = [.. Over()];
        wastes = [.. board.Laid().Pieces.OfType<WastePiece>().Select(waste => waste.At)];
    }

    /// <summary>Whether it is so.</summary>
    public bool Holds() => board.Lost.Count == 0 || (Over().All(over.Contains) && board.Laid().Pieces.OfType<WastePiece>().All(IsStillWaste));

    private bool IsStillWaste(WastePiece waste) => !board.Kept.Include(waste.At)
        || wastes.Exists(before => before.X <= waste.At.X && before.Y <= waste.At.Y && before.Right >= waste.At.Right && before.Top >= waste.At.Top);

    /// <summary>Every piece with what it lies over; the piece without its place and size, which may change.</summary>
    private IEnumerable<(Piece Piece, Rect Lost)> Over() =>
        from piece in board.Laid().Pieces
        where piece is not WastePiece
        from lost in board.Lost
        where lost.Overlaps(piece.At)
        select (piece is PartPiece part ? part with { At = default, Finished = null } : piece with { At = default }, lost);
}
