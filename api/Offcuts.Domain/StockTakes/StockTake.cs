namespace Offcuts.Domain;

/// <summary>A walk through one place, to make the book say what is there. There is at most one open for a place.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Place">The place, exactly as boards have it.</param>
/// <param name="StartedAt">When it was started.</param>
/// <param name="FinishedAt">When it was finished; null as long as it is open.</param>
public sealed record StockTake(long Number, string Place, DateTimeOffset StartedAt, DateTimeOffset? FinishedAt);

/// <summary>How a stock-take found a board.</summary>
public enum Finding
{
    /// <summary>It is there, just as the book has it.</summary>
    Confirmed,

    /// <summary>It is there, but not as the book had it.</summary>
    Corrected,

    /// <summary>It is there, and the book had it elsewhere or not on the rack any more.</summary>
    Moved,

    /// <summary>It is not there and was struck off.</summary>
    Struck,

    /// <summary>It is there and was not in the book.</summary>
    Added,

    /// <summary>It was not seen, and was left in the book.</summary>
    Left,
}

/// <summary>A board that a stock-take has dealt with.</summary>
/// <param name="BoardId">The board.</param>
/// <param name="Finding">How it was found.</param>
/// <param name="At">When.</param>
/// <param name="Line">The line of the journal that says so; null where nothing changed.</param>
public sealed record SeenBoard(string BoardId, Finding Finding, DateTimeOffset At, long? Line);

/// <summary>How far a stock-take is.</summary>
/// <param name="Take">The stock-take.</param>
/// <param name="Seen">What it has dealt with, in that order.</param>
/// <param name="Unseen">What lies there by the book and is not seen yet, oldest first; none once it is finished.</param>
public sealed record StockTakeState(StockTake Take, IReadOnlyList<SeenBoard> Seen, IReadOnlyList<Board> Unseen);
