namespace Offcuts.Storage;

/// <summary>By what boards are sorted.</summary>
public enum BoardKey
{
    /// <summary>By species id.</summary>
    Species,

    /// <summary>From the thin to the thick.</summary>
    Thickness,

    /// <summary>From the narrow to the wide.</summary>
    Width,

    /// <summary>From the short to the long.</summary>
    Length,

    /// <summary>By place; those without one last.</summary>
    Place,

    /// <summary>By batch; those without one last.</summary>
    Batch,

    /// <summary>From the young to the old.</summary>
    Age,
}

/// <summary>How boards are sorted; those alike as they were logged.</summary>
/// <param name="By">By what.</param>
/// <param name="IsReversed">Whether the other way round.</param>
public sealed record BoardOrder(BoardKey By, bool IsReversed)
{
    /// <summary>What is compared, as text.</summary>
    internal string Column => By switch
    {
        BoardKey.Species => "species",
        BoardKey.Thickness => "printf('%010d', thickness_ticks)",
        BoardKey.Width => "printf('%010d', width_ticks)",
        BoardKey.Length => "printf('%010d', length_ticks)",
        BoardKey.Place => "coalesce('0' || place, '1')",
        BoardKey.Batch => "coalesce('0' || batch, '1')",
        BoardKey.Age => "logged_at",
    };

    /// <summary>Whether large values come first.</summary>
    internal bool IsDescending => (By == BoardKey.Age) != IsReversed;
}

/// <summary>A board's place in a list, after which the next page begins.</summary>
/// <param name="Sequence">Its sequence number.</param>
/// <param name="Key">What the list is sorted by; null for a list in the order of logging.</param>
public sealed record BoardMark(long Sequence, string? Key);
