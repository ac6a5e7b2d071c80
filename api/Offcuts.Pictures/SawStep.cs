using Offcuts.Domain;

namespace Offcuts.Pictures;

/// <summary>One cut as the person at the saw makes it.</summary>
/// <param name="Cut">The cut.</param>
/// <param name="From">The piece that it divides.</param>
/// <param name="Low">What lies to its left (of a crosscut) or below it (of a rip).</param>
/// <param name="High">What lies to its right or above it.</param>
internal sealed record SawStep(SawCut Cut, Rect From, Rect Low, Rect High)
{
    /// <summary>The cuts of a board in order, each with what it divides.</summary>
    /// <exception cref="ArgumentException">A cut goes right through none of the pieces that are left at its turn.</exception>
    public static IReadOnlyList<SawStep> Of(BoardCut board)
    {
        var whole = new List<Rect> { new(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width) };
        var steps = new List<SawStep>();
        foreach (var cut in board.Cuts.OrderBy(cut => cut.Order))
        {
            var step = whole.Where(piece => GoesThrough(cut, piece)).Select(piece => Divide(cut, piece)).FirstOrDefault()
                ?? throw new ArgumentException(
                    FormattableString.Invariant($"Cut {cut.Order} of board {board.Number} goes right through no piece."), nameof(board));
            whole.Remove(step.From);
            whole.AddRange(new[] { step.Low, step.High }.Where(part => part.Length > Length.Zero && part.Width > Length.Zero));
            steps.Add(step);
        }

        return steps;
    }

    /// <summary>
    /// Whether to measure from the right end or the upper edge: where that side gives a single piece that is wanted and the other
    /// none, so that the stop or fence is set to the wanted size and not to the waste.
    /// </summary>
    public bool MeasuresHigh(IReadOnlyList<KeyedPiece> pieces) =>
        Within(pieces, Low).All(piece => piece.Piece is WastePiece) && Within(pieces, High) is [{ Piece: not WastePiece }];

    /// <summary>What the stop or fence is set to.</summary>
    public Length Setting(IReadOnlyList<KeyedPiece> pieces)
    {
        var side = MeasuresHigh(pieces) ? High : Low;
        return Cut.Direction == FirstCut.Crosscut ? side.Length : side.Width;
    }

    /// <summary>The pieces of a board that lie within a part of it.</summary>
    public static IReadOnlyList<KeyedPiece> Within(IReadOnlyList<KeyedPiece> pieces, Rect part) =>
        [.. pieces.Where(piece => part.Overlaps(piece.Piece.At))];

    private static bool GoesThrough(SawCut cut, Rect piece) => cut.Kerf.Overlaps(piece) && (cut.Direction == FirstCut.Crosscut
        ? cut.Kerf.Y == piece.Y && cut.Kerf.Top == piece.Top && cut.Kerf.X >= piece.X && cut.Kerf.Right <= piece.Right
        : cut.Kerf.X == piece.X && cut.Kerf.Right == piece.Right && cut.Kerf.Y >= piece.Y && cut.Kerf.Top <= piece.Top);

    private static SawStep Divide(SawCut cut, Rect piece) => cut.Direction == FirstCut.Crosscut
        ? new(
            cut, piece,
            piece with { Length = cut.Kerf.X - piece.X },
            piece with { X = cut.Kerf.Right, Length = piece.Right - cut.Kerf.Right })
        : new(
            cut, piece,
            piece with { Width = cut.Kerf.Y - piece.Y },
            piece with { Y = cut.Kerf.Top, Width = piece.Top - cut.Kerf.Top });
}
