using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>
/// A board's warp with the length and width over which it was measured, and what is left of it in a blank. Flat boards are all equal, whatever
/// their size, so that they share a profile.
/// </summary>
internal readonly record struct Flattening(Warp Warp, Length Long, Length Wide)
{
    public static Flattening Of(Board board) => board.Kind == BoardKind.Sheet || board.Warp.IsFlat
        ? default
        : new(board.Warp, board.Size.Length, board.Size.Width);

    /// <summary>By how much the edge of a blank so long on the board is out of straight: the blank is sawn wider by that.</summary>
    public Length Crook(Length along) => Warp.IsFlat ? Length.Zero : Residual(Warp.Crook, along, along, Long, Long);

    /// <summary>By how much the faces of a blank of the given extents on the board are out of flat: bow, cup and twist add up.</summary>
    public Length Faces(Length along, Length across) => Warp.IsFlat ? Length.Zero
        : Residual(Warp.Bow, along, along, Long, Long) + Residual(Warp.Cup, across, across, Wide, Wide) + Residual(Warp.Twist, along, across, Long, Wide);

    /// <summary>sagitta a b / (A B), rounded up to a whole tick.</summary>
    private static Length Residual(Length sagitta, Length a, Length b, Length wholeA, Length wholeB)
    {
        var divisor = (Int128)wholeA.Ticks * wholeB.Ticks;
        return Length.FromTicks((long)((((Int128)sagitta.Ticks * a.Ticks * b.Ticks) + divisor - 1) / divisor));
    }
}
