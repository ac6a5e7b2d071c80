namespace Offcuts.Domain;

/// <summary>What of a line is understood so far, and where each of it stands.</summary>
internal sealed class LineDraft(LineScanner line)
{
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly List<QuickFault> faults = [];

    public List<SizeNumber> Numbers { get; } = [];

    public List<DefectPhrase> Defects { get; } = [];

    public int? Quantity { get; set; }

    public Species? Species { get; set; }

    public Surface? Surface { get; set; }

    public Appearance? Appearance { get; set; }

    public (EndState? Left, EndState? Right) Ends { get; set; }

    public MoistureReading? Moisture { get; set; }

    public Dictionary<string, string> Warp { get; } = new(StringComparer.Ordinal);

    /// <summary>The place; empty to name none from here on, null where the line does not speak of it.</summary>
    public string? Place { get; set; }

    /// <summary>The batch; empty to name none from here on, null where the line does not speak of it.</summary>
    public string? Batch { get; set; }

    public string? Source { get; set; }

    public string? Note { get; set; }

    /// <summary>Whether the whole size was called an estimate.</summary>
    public bool IsEstimate { get; set; }

    public IReadOnlyList<QuickFault> Faults => [.. faults.OrderBy(fault => fault.Column)];

    public bool IsSound => faults.Count == 0;

    /// <summary>Whether the line speaks of a board, and not only of what holds for those to come.</summary>
    public bool NamesBoard => Numbers.Count > 0 || Quantity is not null || Defects.Count > 0 || Warp.Count > 0 || Surface is not null
        || Appearance is not null || Ends != default || Moisture is not null || Note is not null || Source is not null || IsEstimate;

    public void Fault(int at, string detail) => faults.Add(new(line.ColumnOf(at), detail));

    /// <summary>Remembers where something stands; a fault if it stood before.</summary>
    public bool Once(string what, int at)
    {
        if (places.TryAdd(what, at))
        {
            return true;
        }

        Fault(at, $"This is a second {what}: a line is one board or several exactly alike, so name it once.");
        return false;
    }

    /// <summary>Where something stands; at the first number if nowhere.</summary>
    public int PlaceOf(string what) => places.TryGetValue(what, out var at) ? at : Numbers.Count > 0 ? Numbers[0].At : 0;
}

/// <summary>A number of a size.</summary>
/// <param name="At">Where it stands.</param>
/// <param name="Text">As it was written, with plain signs.</param>
/// <param name="IsEstimate">Whether it was written as an estimate.</param>
/// <param name="IsAfterTimes">Whether an x stands before it.</param>
/// <param name="IsTight">Whether it follows an x without a space between it and the number before.</param>
/// <param name="Side">The side that it was said to be; null where its place among the others tells.</param>
internal sealed record SizeNumber(int At, string Text, bool IsEstimate, bool IsAfterTimes, bool IsTight, Side? Side);

/// <summary>A side of a board.</summary>
internal enum Side
{
    Thickness,
    Width,
    Length,
}

/// <summary>A defect, before the size of its board is known.</summary>
/// <param name="At">Where it stands.</param>
/// <param name="Texts">The defect, or the two at both ends, as <see cref="DefectText"/> reads them.</param>
internal sealed record DefectPhrase(int At, IReadOnlyList<string> Texts);
