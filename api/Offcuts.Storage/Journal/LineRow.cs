namespace Offcuts.Storage;

/// <summary>A row of <c>journal</c>.</summary>
internal sealed class LineRow
{
    public long Line { get; init; }

    public string At { get; init; } = "";

    public string Kind { get; init; } = "";
}

/// <summary>A row of <c>journal_boards</c>, as far as it is asked for.</summary>
internal sealed class LineBoardRow
{
    public long Line { get; init; }

    public string Id { get; init; } = "";

    public string? State { get; init; }
}
