namespace Offcuts.Storage;

/// <summary>A row of <c>design_versions</c> with its design.</summary>
internal sealed class DesignRow
{
    public long Sequence { get; init; }

    public string Reference { get; init; } = "";

    public string Version { get; init; } = "";

    public bool Current { get; init; }

    public string CreatedAt { get; init; } = "";

    public string Content { get; init; } = "";

    public StoredDesign ToDesign() => new(Reference, Version, Current, Stamp.Read(CreatedAt), Content);
}
