using Refit;

namespace Offcuts.Contracts;

/// <summary>Which labels to draw; what is null takes its default.</summary>
public sealed record LabelQuery
{
    /// <summary>The sheet of labels, for instance <c>letter-3x10</c> or <c>a4-3x8</c>.</summary>
    [AliasAs("stock")]
    public string? Stock { get; init; }

    /// <summary>Ids of boards with commas between them; null for all that are free or reserved.</summary>
    [AliasAs("ids")]
    public string? Ids { get; init; }

    /// <summary>Where the boards lie, exactly as entered; null for anywhere.</summary>
    [AliasAs("place")]
    public string? Place { get; init; }

    /// <summary>How many labels of the first sheet were used before; null for none.</summary>
    [AliasAs("skip")]
    public int? Skip { get; init; }
}
