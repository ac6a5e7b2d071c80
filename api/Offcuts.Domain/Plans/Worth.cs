namespace Offcuts.Domain;

/// <summary>
/// The second objective's currency: what a piece of wood would still be good for, in minor units of money.
/// </summary>
/// <remarks>
/// Worth is volume times the species' rate times a factor for size between 0.15 and 1: a long wide board is worth more
/// per board foot than the same wood in short ends. The factor is (0.3 + 0.7 min(1, length / 96 in)) times
/// (0.5 + 0.5 min(1, width / 8 in)). A piece below the keep size is worth nothing. A board that has lain for years is
/// worth up to a fifth less (a fifteenth for each year, three years at most), so that the old is used before the new.
/// These weights are the product's own judgement; they never outweigh money.
/// </remarks>
public static class Worth
{
    private static readonly long FullLength = Length.FromInches(96).Ticks;
    private static readonly long FullWidth = Length.FromInches(8).Ticks;

    /// <summary>Worth of a piece of one species' wood, rounded down to a whole minor unit.</summary>
    /// <param name="size">Size of the piece.</param>
    /// <param name="ratePerBoardFoot">The species' rate.</param>
    /// <param name="keep">The smallest leftover that is kept.</param>
    public static Money Of(Dimensions size, Money ratePerBoardFoot, Dimensions keep)
    {
        if (!IsKept(size, keep))
        {
            return Money.Zero;
        }

        var lengthFactor = 0.3m + (0.7m * Math.Min(1m, (decimal)size.Length.Ticks / FullLength));
        var widthFactor = 0.5m + (0.5m * Math.Min(1m, (decimal)size.Width.Ticks / FullWidth));
        return new Money((long)decimal.Floor(
            BoardMeasure.BoardFeet(size) * ratePerBoardFoot.MinorUnits * lengthFactor * widthFactor));
    }

    /// <summary>Worth of a board in stock on a given day, age taken into account.</summary>
    public static Money OfBoard(Board board, Money ratePerBoardFoot, Dimensions keep, DateOnly today)
    {
        var worth = Of(board.Size, ratePerBoardFoot, keep).MinorUnits;
        var days = Math.Clamp(today.DayNumber - DateOnly.FromDateTime(board.LoggedAt.UtcDateTime).DayNumber, 0, 3 * 365);
        return new Money(worth - (worth * days / (15 * 365)));
    }

    /// <summary>Whether a leftover of this size goes back to the rack.</summary>
    public static bool IsKept(Dimensions size, Dimensions keep) =>
        size.Thickness >= keep.Thickness && size.Width >= keep.Width && size.Length >= keep.Length;
}
