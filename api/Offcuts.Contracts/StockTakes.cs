using Refit;

namespace Offcuts.Contracts;

/// <summary>The place of which stock is taken.</summary>
/// <param name="Place">The place, exactly as boards have it.</param>
/// <param name="NewPlace">Whether it may be one that the book does not know yet; else such a name is refused, because it is mostly a slip.</param>
public sealed record StockTakeStart(string Place, bool NewPlace = false);

/// <summary>One step of a stock-take: exactly one member is given.</summary>
/// <param name="Confirm">Id of a board that is there; if the book has it elsewhere, or gone, it is moved here.</param>
/// <param name="Correct">A board that is there, but otherwise than the book has it.</param>
/// <param name="Strike">Id of a board that is not there.</param>
/// <param name="Line">A board that is there and not in the book, as a maker says it: <c>3/4 x 5 1/2 x 36 ash</c>.</param>
/// <param name="Forget">Id of a board that was confirmed by mistake. What changed the stock is taken back in the journal instead.</param>
/// <param name="Carry">What carries on to the line from lines before; its place is that of the stock-take whatever it says.</param>
public sealed record StockTakeStepEntry(
    string? Confirm = null, StockTakeCorrection? Correct = null, string? Strike = null, string? Line = null, string? Forget = null, LineCarry? Carry = null);

/// <summary>A board as it is.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Board">All that is known of it; where it names no place, it lies at that of the stock-take.</param>
public sealed record StockTakeCorrection(string Id, BoardEntry Board);

/// <summary>What a step came to.</summary>
/// <param name="Finding"><c>confirmed</c>, <c>corrected</c>, <c>moved</c>, <c>struck</c> or <c>added</c>; null where nothing was found.</param>
/// <param name="Board">The board as it is now; null for a line that only says what holds for the next.</param>
/// <param name="JournalLine">The line of the journal that tells what changed; null where nothing did.</param>
/// <param name="Understood">What a line was understood as, in words; null for other steps.</param>
/// <param name="Carry">What carries on to lines that follow; null for other steps.</param>
/// <param name="Unseen">How many entries of the inventory are still unseen.</param>
public sealed record StockTakeStepRecord(string? Finding, BoardRecord? Board, long? JournalLine, string? Understood, LineCarry? Carry, int Unseen);

/// <summary>How a stock-take ends.</summary>
/// <param name="Unseen">What is to become of what is unseen: <c>strike</c> or <c>leave</c>; null where all was seen.</param>
public sealed record StockTakeFinish(string? Unseen = null);

/// <summary>A walk through one place, and how far it is.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Place">The place.</param>
/// <param name="StartedAt">When it was started (UTC).</param>
/// <param name="FinishedAt">When it was finished (UTC); null as long as it is open.</param>
/// <param name="Seen">What it has dealt with, in that order.</param>
/// <param name="Unseen">What lies there by the book and is not seen yet, oldest first; none once it is finished.</param>
public sealed record StockTakeRecord(
    long Number, string Place, DateTimeOffset StartedAt, DateTimeOffset? FinishedAt, IReadOnlyList<SeenBoardRecord> Seen, IReadOnlyList<BoardRecord> Unseen);

/// <summary>A board that a stock-take has dealt with.</summary>
/// <param name="BoardId">The board.</param>
/// <param name="Finding"><c>confirmed</c>, <c>corrected</c>, <c>moved</c>, <c>struck</c>, <c>added</c> or <c>left</c>.</param>
/// <param name="At">When (UTC).</param>
/// <param name="JournalLine">The line of the journal that tells what changed; null where nothing did.</param>
public sealed record SeenBoardRecord(string BoardId, string Finding, DateTimeOffset At, long? JournalLine);

/// <summary>A stock-take in a list.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Place">The place.</param>
/// <param name="StartedAt">When it was started (UTC).</param>
/// <param name="FinishedAt">When it was finished (UTC); null as long as it is open.</param>
public sealed record StockTakeSummary(long Number, string Place, DateTimeOffset StartedAt, DateTimeOffset? FinishedAt);

/// <summary>One page of stock-takes.</summary>
/// <param name="Items">The stock-takes, newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record StockTakePage(IReadOnlyList<StockTakeSummary> Items, string? Next);

/// <summary>Which stock-takes to list; what is null does not restrict.</summary>
public sealed record StockTakeQuery
{
    /// <summary><c>open</c> or <c>finished</c>.</summary>
    [AliasAs("state")]
    public string? State { get; init; }

    /// <summary>Entries on a page, 1 to 500; 100 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>The <c>next</c> of the page before.</summary>
    [AliasAs("cursor")]
    public string? Cursor { get; init; }
}
