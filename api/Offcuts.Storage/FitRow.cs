namespace Offcuts.Storage;

/// <summary>A row of <c>fit_outcomes</c>.</summary>
internal sealed class FitRow
{
    public string Mark { get; init; } = "";

    public string Seen { get; init; } = "";

    public string Outcome { get; init; } = "";

    public StoredFit ToFit() => new(Mark, Seen, Outcome);
}
