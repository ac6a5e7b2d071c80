using Refit;

namespace Offcuts.Contracts;

/// <summary>Which boards; what is null does not restrict.</summary>
public record BoardFilterQuery
{
    /// <summary>Species id.</summary>
    [AliasAs("species")]
    public string? Species { get; init; }

    /// <summary>Least thickness in millimetres.</summary>
    [AliasAs("minThicknessMm")]
    public decimal? MinThicknessMm { get; init; }

    /// <summary>Greatest thickness in millimetres.</summary>
    [AliasAs("maxThicknessMm")]
    public decimal? MaxThicknessMm { get; init; }

    /// <summary>Least length in millimetres.</summary>
    [AliasAs("minLengthMm")]
    public decimal? MinLengthMm { get; init; }

    /// <summary>Greatest length in millimetres.</summary>
    [AliasAs("maxLengthMm")]
    public decimal? MaxLengthMm { get; init; }

    /// <summary>Least width in millimetres.</summary>
    [AliasAs("minWidthMm")]
    public decimal? MinWidthMm { get; init; }

    /// <summary><c>free</c>, <c>reserved</c>, <c>used</c> or <c>gone</c>.</summary>
    [AliasAs("status")]
    public string? Status { get; init; }

    /// <summary><c>solid</c> or <c>sheet</c>.</summary>
    [AliasAs("kind")]
    public string? Kind { get; init; }

    /// <summary>Its batch, exactly as entered.</summary>
    [AliasAs("batch")]
    public string? Batch { get; init; }

    /// <summary>Where it lies, exactly as entered.</summary>
    [AliasAs("place")]
    public string? Place { get; init; }

    /// <summary>Only those logged before this day (UTC): <c>2026-03-14</c>.</summary>
    [AliasAs("loggedBefore")]
    public string? LoggedBefore { get; init; }
}

/// <summary>Which boards to list, and how.</summary>
public sealed record BoardQuery : BoardFilterQuery
{
    /// <summary>
    /// <c>species</c>, <c>thickness</c>, <c>width</c>, <c>length</c>, <c>place</c>, <c>batch</c> or <c>age</c>, with <c>-</c> before it for the other way
    /// round; in the order of logging if null.
    /// </summary>
    [AliasAs("sort")]
    public string? Sort { get; init; }

    /// <summary>Boards on a page, 1 to 500; 100 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>The <c>next</c> of the page before.</summary>
    [AliasAs("cursor")]
    public string? Cursor { get; init; }
}

/// <summary>Which boards to add up, and by what.</summary>
public sealed record TotalsQuery : BoardFilterQuery
{
    /// <summary><c>species</c>, <c>thickness</c>, <c>length</c>, <c>place</c>, <c>batch</c> or <c>age</c>; species if null.</summary>
    [AliasAs("by")]
    public string? By { get; init; }
}
