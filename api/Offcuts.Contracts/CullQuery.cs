using Refit;

namespace Offcuts.Contracts;

/// <summary>What may be let go; what is null does not restrict.</summary>
public sealed record CullQuery
{
    /// <summary>The most rows of boards to suggest, 1 to 2000.</summary>
    [AliasAs("top")]
    public int? Top { get; init; }

    /// <summary>Suggest no more than makes so many cubic metres of space.</summary>
    [AliasAs("freeM3")]
    public decimal? FreeM3 { get; init; }

    /// <summary>From how many days on a board has lain for long, 1 to 36500; 730 if null.</summary>
    [AliasAs("olderThanDays")]
    public int? OlderThanDays { get; init; }
}
