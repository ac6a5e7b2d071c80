namespace Offcuts.Domain;

/// <summary>How a board came onto the rack by a build: bought for it, or left over from a board that it cut.</summary>
/// <param name="PlanId">The plan that was built.</param>
/// <param name="CutFrom">The board that it was cut from; null for one that was bought.</param>
public sealed record Origin(string PlanId, string? CutFrom);

/// <summary>What one board cost.</summary>
/// <param name="Amount">The price, or a leftover's share of it.</param>
/// <param name="Currency">ISO 4217 code: the shop may have another by now.</param>
public sealed record BoardPrice(Money Amount, string Currency)
{
    /// <summary>The share of a piece by volume, rounded down so that the pieces of a board never cost more than it did.</summary>
    /// <param name="piece">Size of the piece.</param>
    /// <param name="board">Size of the board that cost this much.</param>
    public BoardPrice Share(Dimensions piece, Dimensions board) => this with
    {
        Amount = new Money((long)decimal.Floor(Amount.MinorUnits * Math.Min(1m, BoardMeasure.BoardFeet(piece) / BoardMeasure.BoardFeet(board)))),
    };
}

/// <summary>One board that an accepted plan holds.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="Number">The board's number in it.</param>
public sealed record Hold(string PlanId, int Number);
