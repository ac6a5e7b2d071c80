using Refit;

namespace Offcuts.Contracts;

/// <summary>Which offers to list; what is null does not restrict.</summary>
public sealed record OfferQuery
{
    /// <summary>Supplier as paths name it.</summary>
    [AliasAs("supplier")]
    public string? Supplier { get; init; }

    /// <summary>Species id.</summary>
    [AliasAs("species")]
    public string? Species { get; init; }

    /// <summary><c>solid</c> or <c>sheet</c>.</summary>
    [AliasAs("kind")]
    public string? Kind { get; init; }

    /// <summary>Least thickness in millimetres.</summary>
    [AliasAs("minThicknessMm")]
    public decimal? MinThicknessMm { get; init; }

    /// <summary>Greatest thickness in millimetres.</summary>
    [AliasAs("maxThicknessMm")]
    public decimal? MaxThicknessMm { get; init; }

    /// <summary>Offers on a page, 1 to 500; 100 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>The <c>next</c> of the page before.</summary>
    [AliasAs("cursor")]
    public string? Cursor { get; init; }
}

/// <summary>One page of a list that has no filters.</summary>
public sealed record PageQuery
{
    /// <summary>Entries on a page, 1 to 500; 100 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>The <c>next</c> of the page before.</summary>
    [AliasAs("cursor")]
    public string? Cursor { get; init; }
}

/// <summary>Which planning runs to list; what is null does not restrict.</summary>
public sealed record PlanQuery
{
    /// <summary><c>queued</c>, <c>planning</c>, <c>done</c>, <c>cancelled</c>, <c>failed</c> or <c>interrupted</c>.</summary>
    [AliasAs("state")]
    public string? State { get; init; }

    /// <summary>Reference of a stored design.</summary>
    [AliasAs("design")]
    public string? Design { get; init; }

    /// <summary><c>build</c> or <c>what-if</c>.</summary>
    [AliasAs("purpose")]
    public string? Purpose { get; init; }

    /// <summary>Runs on a page, 1 to 500; 100 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>The <c>next</c> of the page before.</summary>
    [AliasAs("cursor")]
    public string? Cursor { get; init; }
}
