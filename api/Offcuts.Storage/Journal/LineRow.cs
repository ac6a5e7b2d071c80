namespace Offcuts.Storage;

/// <summary>A row of <c>journal</c>, as far as it is asked for, and the line that takes it back.</summary>
internal sealed class LineRow
{
    public long Line { get; init; }

    public string At { get; init; } = "";

    public string Kind { get; init; } = "";

    public string? PlanId { get; init; }

    public string? Build { get; init; }

    public long? Undoes { get; init; }

    public long? UndoneBy { get; init; }
}

/// <summary>A row of <c>journal_boards</c>, as far as it is asked for.</summary>
internal sealed class LineBoardRow
{
    public long Line { get; init; }

    public string Id { get; init; } = "";

    public string? State { get; init; }
}
