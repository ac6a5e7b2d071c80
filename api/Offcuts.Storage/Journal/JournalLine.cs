namespace Offcuts.Storage;

/// <summary>What kind of change a line of the journal tells.</summary>
public enum JournalKind
{
    /// <summary>The boards that were there before the journal was.</summary>
    Opening,

    /// <summary>Boards were logged one by one.</summary>
    Log,

    /// <summary>Boards were logged many at once.</summary>
    Import,

    /// <summary>What is known of a board was changed.</summary>
    Edit,

    /// <summary>A board was forgotten.</summary>
    Delete,

    /// <summary>A plan took its boards.</summary>
    Accept,

    /// <summary>A plan gave back the boards that were not cut yet.</summary>
    Release,

    /// <summary>A plan gave back its boards because the shop lets it hold them only so long.</summary>
    Expire,

    /// <summary>Boards of a plan were cut.</summary>
    Close,

    /// <summary>An earlier line was taken back.</summary>
    Undo,
}

/// <summary>One change of the stock.</summary>
/// <param name="Line">Its number, from 1 without gaps.</param>
/// <param name="At">When.</param>
/// <param name="Kind">What.</param>
/// <param name="PlanId">The plan that it is about; null for none.</param>
/// <param name="Undoes">The line that it takes back; null for none.</param>
/// <param name="UndoneBy">The line that takes it back; null as long as it stands.</param>
/// <param name="Boards">The ids of the boards that it touched.</param>
/// <param name="StockTake">The stock-take that it is part of; null for none.</param>
public sealed record JournalLine(
    long Line, DateTimeOffset At, JournalKind Kind, string? PlanId, long? Undoes, long? UndoneBy, IReadOnlyList<string> Boards, long? StockTake = null);

/// <summary>What rebuilding the inventory from the journal came to.</summary>
/// <param name="Lines">Lines of the journal.</param>
/// <param name="Boards">Boards that were rebuilt.</param>
/// <param name="Differences">Where the inventory is not what the journal says; empty if it is.</param>
public sealed record JournalCheck(long Lines, int Boards, IReadOnlyList<JournalDifference> Differences);

/// <summary>One place where inventory and journal do not agree.</summary>
/// <param name="BoardId">The board.</param>
/// <param name="Detail">What is different.</param>
public sealed record JournalDifference(string BoardId, string Detail);
