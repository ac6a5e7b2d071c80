namespace Offcuts.Storage;

/// <summary>A row of <c>journal</c>, as far as it is asked for, the line that takes it back, and what it left of one board.</summary>
internal sealed class LineRow
{
    public long Line { get; init; }

    public string At { get; init; } = "";

    public string Kind { get; init; } = "";

    public string? PlanId { get; init; }

    public string? Build { get; init; }

    public long? Undoes { get; init; }

    public long? UndoneBy { get; init; }

    public long? StockTake { get; init; }

    public string BoardId { get; init; } = "";

    public string? State { get; init; }

    public JournalLine ToLine(IReadOnlyList<string> boards) =>
        new(Line, Stamp.Read(At), Words.Read<JournalKind>(Kind), PlanId, Undoes, UndoneBy, boards, StockTake);
}

/// <summary>A row of <c>journal_boards</c>, as far as it is asked for.</summary>
internal sealed class LineBoardRow
{
    public long Line { get; init; }

    public string Id { get; init; } = "";

    public string? State { get; init; }
}
