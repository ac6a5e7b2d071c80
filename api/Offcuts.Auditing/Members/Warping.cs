using System.Numerics;
using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// What is left of a board's warp in a blank cut from it, as a maker finds it with the straightedge. The chord of an arc shortened to a fraction
/// keeps the square of that fraction of the sagitta; a twist goes with both fractions. Every term is counted up to a whole tick.
/// </summary>
internal sealed class Warping(BoardKind kind, Warp warp, Dimensions board)
{
    /// <summary>Whether no warp is recorded.</summary>
    public bool IsFlat => warp.IsFlat;

    /// <summary>The warp of a board of the plan; a bought one has none.</summary>
    public static Warping Of(SourcedCut cut) => new(cut.Board.Kind, cut.Stock?.Warp ?? default, cut.Stock?.Size ?? cut.Board.Size);

    private static readonly Length SixtyFourth = Length.FromInches(0, 1, 64);
    private static readonly Length TenthOfMillimetre = Length.FromMillimetres(0.1m);

    /// <summary>
    /// What straightening the edge of a blank so long on the board takes of its width, up to a whole 64th of an inch where the board's width was measured in
    /// them, else to a tenth of a millimetre.
    /// </summary>
    public Length Edge(Length along)
    {
        var rest = Rest(warp.Crook, (along, board.Length), (along, board.Length));
        var step = board.Width.IsWholeSixtyFourths ? SixtyFourth : TenthOfMillimetre;
        var over = rest.Ticks % step.Ticks;
        return over == 0 ? rest : rest - Length.FromTicks(over) + step;
    }

    /// <summary>What flattening a blank of the given extents on the board takes of its thickness.</summary>
    public Length Face(Length along, Length across) =>
        Rest(warp.Bow, (along, board.Length), (along, board.Length))
        + Rest(warp.Cup, (across, board.Width), (across, board.Width))
        + Rest(warp.Twist, (along, board.Length), (across, board.Width));

    private Length Rest(Length sagitta, (Length Part, Length Whole) first, (Length Part, Length Whole) second)
    {
        if (kind == BoardKind.Sheet || sagitta == Length.Zero)
        {
            return Length.Zero;
        }

        var (kept, fraction) = BigInteger.DivRem(
            (BigInteger)sagitta.Ticks * first.Part.Ticks * second.Part.Ticks, (BigInteger)first.Whole.Ticks * second.Whole.Ticks);
        return Length.FromTicks((long)kept + (fraction.IsZero ? 0 : 1));
    }
}
