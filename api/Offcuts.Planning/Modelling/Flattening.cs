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

    // 127 ticks are 1/64 in, 32 are 0.1 mm.
    private long Step => Wide.IsWholeSixtyFourths ? 127 : 32;

    /// <summary>
    /// By how much the edge of a blank so long on the board is out of straight, rounded up to what a fence can be set to: the blank is sawn wider by that.
    /// </summary>
    public Length Crook(Length along)
    {
        if (Warp.IsFlat)
        {
            return Length.Zero;
        }

        var exact = Residual(Warp.Crook, along, along, Long, Long).Ticks;
        return Length.FromTicks((exact + Step - 1) / Step * Step);
    }

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
