namespace Offcuts.Domain;

/// <summary>How much the wood of a board counts where builds are ranked by what they eat of the pile.</summary>
/// <remarks>
/// Wood counts by its worth per board foot, times (2 - s) (1 + y / 3): s is the factor for size of <see cref="Worth"/>, between 0.15 for short ends
/// and 1 for long wide boards, and y the years on the rack, three at most. So the wood of an awkward piece counts up to 1.85 times, that of an old
/// one up to twice, and that of a large fresh board once. These weights are the product's own judgement.
/// </remarks>
public static class PileWeight
{
    private const decimal DaysOfThreeYears = 3 * 365;

    /// <summary>The factor of a board's wood, from 1 to 3.7.</summary>
    /// <param name="board">The board as it lies on the rack.</param>
    /// <param name="today">The day on which it is asked.</param>
    public static decimal Of(Board board, DateOnly today)
    {
        var days = today.DayNumber - DateOnly.FromDateTime(board.LoggedAt.UtcDateTime).DayNumber;
        return (2 - Worth.SizeFactor(board.Size)) * (1 + Math.Clamp(days / DaysOfThreeYears, 0, 1));
    }
}
