namespace Offcuts.Contracts;

/// <summary>One change of the stock; the journal is only ever added to.</summary>
/// <param name="Line">Its number, from 1 without gaps.</param>
/// <param name="At">When (UTC).</param>
/// <param name="Kind">
/// <c>opening</c> (what was there before the journal), <c>log</c>, <c>import</c>, <c>edit</c>, <c>delete</c>, <c>accept</c>, <c>release</c>,
/// <c>expire</c>, <c>close</c> or <c>undo</c>.
/// </param>
/// <param name="Boards">The ids of the boards that it touched.</param>
/// <param name="PlanId">The plan that it is about; null for none.</param>
/// <param name="Undoes">The line that it takes back; null for none.</param>
/// <param name="UndoneBy">The line that takes it back; null as long as it stands.</param>
/// <param name="StockTake">The number of the stock-take that it is part of; null for none.</param>
public sealed record JournalLineRecord(
    long Line, DateTimeOffset At, string Kind, IReadOnlyList<string> Boards, string? PlanId = null, long? Undoes = null, long? UndoneBy = null, long? StockTake = null);

/// <summary>One page of the journal.</summary>
/// <param name="Items">The lines, newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record JournalPage(IReadOnlyList<JournalLineRecord> Items, string? Next);

/// <summary>What rebuilding the inventory from the journal came to.</summary>
/// <param name="Agrees">Whether the inventory is what the journal says.</param>
/// <param name="Lines">Lines of the journal.</param>
/// <param name="Boards">Boards that were rebuilt.</param>
/// <param name="Differences">Where they do not agree.</param>
public sealed record JournalCheckRecord(bool Agrees, long Lines, int Boards, IReadOnlyList<JournalDifferenceRecord> Differences);

/// <summary>One place where inventory and journal do not agree.</summary>
/// <param name="BoardId">The board.</param>
/// <param name="Detail">What is different.</param>
public sealed record JournalDifferenceRecord(string BoardId, string Detail);

/// <summary>Everything that ever happened to one board.</summary>
/// <param name="Id">The board.</param>
/// <param name="CutFrom">The board that it was cut from; null for none.</param>
/// <param name="CutInto">The leftovers that were cut from it and are, or were, on the rack.</param>
/// <param name="Items">What happened, oldest first.</param>
public sealed record BoardHistory(string Id, string? CutFrom, IReadOnlyList<string> CutInto, IReadOnlyList<HistoryRecord> Items);

/// <summary>What one line of the journal did to a board.</summary>
/// <param name="Line">Number of the line.</param>
/// <param name="At">When (UTC).</param>
/// <param name="Kind">See <see cref="JournalLineRecord"/>.</param>
/// <param name="Text">The same in words, with sizes in the shop's unit.</param>
/// <param name="PlanId">The plan that it is about; null for none.</param>
/// <param name="UndoneBy">The line that takes it back; null as long as it stands.</param>
/// <param name="Board">The board after it; null once it is out of the inventory.</param>
public sealed record HistoryRecord(long Line, DateTimeOffset At, string Kind, string Text, string? PlanId, long? UndoneBy, BoardRecord? Board);
