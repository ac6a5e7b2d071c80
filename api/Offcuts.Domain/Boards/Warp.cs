namespace Offcuts.Domain;

/// <summary>
/// How far a board of solid wood is out of flat and straight, as measured with a straightedge or a string: sagittas over the whole board.
/// All zero for a board that is flat, or that nobody measured.
/// </summary>
/// <param name="Bow">How far the face lies off a straight line from end to end.</param>
/// <param name="Crook">How far the edge lies off a straight line from end to end.</param>
/// <param name="Cup">How far the face lies off a straight line from edge to edge.</param>
/// <param name="Twist">How high one corner stands when the other three lie flat.</param>
/// <remarks>
/// A blank of length l and width w cut from a board of length L and width W keeps bow (l/L)^2 and crook (l/L)^2, cup (w/W)^2 and
/// twist l w / (L W): a shallow arc's sagitta goes with the square of its chord, and a twisted face is a plane saddle.
/// </remarks>
public readonly record struct Warp(Length Bow, Length Crook, Length Cup, Length Twist)
{
    /// <summary>Whether nothing was measured.</summary>
    public bool IsFlat => this == default;

    /// <summary>What a piece of the board keeps of it, each rounded up to a tick: a shallow arc is bent alike everywhere.</summary>
    /// <param name="piece">Size of the piece.</param>
    /// <param name="board">Size of the board.</param>
    public Warp Kept(Dimensions piece, Dimensions board)
    {
        // A piece is no longer and no wider than its board, whatever was measured.
        var along = (Int128)Length.Min(piece.Length, board.Length).Ticks;
        var across = (Int128)Length.Min(piece.Width, board.Width).Ticks;
        var (length, width) = ((Int128)board.Length.Ticks, (Int128)board.Width.Ticks);
        return new(
            Share(Bow, along * along, length * length), Share(Crook, along * along, length * length),
            Share(Cup, across * across, width * width), Share(Twist, along * across, length * width));
    }

    private static Length Share(Length whole, Int128 part, Int128 of) => Length.FromTicks((long)(((whole.Ticks * part) + of - 1) / of));
}

/// <summary>What a blank is counted on to lose when it is made flat and straight, over and above the milling allowances.</summary>
/// <param name="Thickness">For bow, cup and twist.</param>
/// <param name="Width">For crook: the blank is sawn wider by it.</param>
public sealed record Loss(Length Thickness, Length Width);
