namespace Offcuts.Domain;

/// <summary>A board as it was when a design was planned, as far as a plan depends on it.</summary>
/// <param name="BoardId">Its id.</param>
/// <param name="Wood">A print of all that a plan depends on: equal prints are the same wood.</param>
/// <param name="Quantity">How many alike.</param>
public sealed record TouchableBoard(string BoardId, string Wood, int Quantity);

/// <summary>The boards that a design could touch when it was planned.</summary>
/// <param name="Boards">Each once, by id.</param>
public sealed record SeenStock(IReadOnlyList<TouchableBoard> Boards)
{
    /// <summary>
    /// Whether what was planned from this stock is still as good from another: all that it cuts is there, and nothing better can have come. While boards only leave
    /// the rack, a plan that cuts none of them stays what it was, and so does its bound: what is left allows nothing that was not allowed before. Whatever
    /// comes, nothing is cheaper than a plan that is proved and buys nothing; but others might be cut.
    /// </summary>
    /// <param name="outcome">What was planned from this stock.</param>
    /// <param name="now">The stock as it is.</param>
    /// <param name="mayBeNew">
    /// As many boards may have come or changed, in parts of those that there were, while a plan stands that nothing is cheaper than: infinity where only the cost counts, 0 where the
    /// same boards would have to be cut.
    /// </param>
    public bool StillServes(FitOutcome outcome, SeenStock now, double mayBeNew)
    {
        var then = Boards.ToDictionary(board => board.BoardId, StringComparer.Ordinal);
        var still = now.Boards.ToDictionary(board => board.BoardId, StringComparer.Ordinal);
        return outcome.Uses.All(use => still.TryGetValue(use.BoardId, out var board) && board.Wood == then[use.BoardId].Wood && board.Quantity >= use.Count)
            && now.Boards.Count(board => !then.TryGetValue(board.BoardId, out var known) || known.Wood != board.Wood || known.Quantity < board.Quantity)
                <= (outcome.IsProved && outcome.Outlay == Money.Zero ? mayBeNew * Boards.Count : 0);
    }
}
