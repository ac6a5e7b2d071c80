namespace Offcuts.Domain;

/// <summary>
/// The second objective's currency: what a piece of wood would still be good for, in minor units of money.
/// </summary>
/// <remarks>
/// Worth is volume times the species' rate times a factor for size between 0.15 and 1: a long wide board is worth more
/// per board foot than the same wood in short ends. The factor is (0.3 + 0.7 min(1, length / 96 in)) times
/// (0.5 + 0.5 min(1, width / 8 in)). A piece that the shop does not keep (see <see cref="KeepRule"/>) is worth nothing. A board that has lain for years is
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
    /// <param name="keep">The sizes that are kept of the species.</param>
    public static Money Of(Dimensions size, Money ratePerBoardFoot, KeepSizes keep) => keep.Include(size) ? OfKept(size, ratePerBoardFoot) : Money.Zero;

    /// <summary>Worth of a piece that is kept, rounded down to a whole minor unit.</summary>
    /// <param name="size">Size of the piece.</param>
    /// <param name="ratePerBoardFoot">The species' rate.</param>
    public static Money OfKept(Dimensions size, Money ratePerBoardFoot) =>
        new((long)decimal.Floor(BoardMeasure.BoardFeet(size) * ratePerBoardFoot.MinorUnits * SizeFactor(size)));

    /// <summary>How much a board foot of a piece is worth beside one of a long wide board, between 0.15 and 1.</summary>
    public static decimal SizeFactor(Dimensions size) =>
        (0.3m + (0.7m * Math.Min(1m, (decimal)size.Length.Ticks / FullLength))) * (0.5m + (0.5m * Math.Min(1m, (decimal)size.Width.Ticks / FullWidth)));

    /// <summary>Worth of a board in stock on a given day, age taken into account.</summary>
    public static Money OfBoard(Board board, Money ratePerBoardFoot, KeepSizes keep, DateOnly today) => Aged(Of(board.Size, ratePerBoardFoot, keep), board, today);

    /// <summary>What age leaves of the worth of a board.</summary>
    /// <param name="fresh">What it would be worth if it were logged today.</param>
    /// <param name="board">The board.</param>
    /// <param name="today">The day.</param>
    public static Money Aged(Money fresh, Board board, DateOnly today)
    {
        var worth = fresh.MinorUnits;
        var days = Math.Clamp(today.DayNumber - DateOnly.FromDateTime(board.LoggedAt.UtcDateTime).DayNumber, 0, 3 * 365);
        return new Money(worth - (worth * days / (15 * 365)));
    }
}
