namespace Offcuts.Storage;

/// <summary>A row of <c>offers</c>, as far as it is asked for.</summary>
internal sealed class OfferRow
{
    public long Sequence { get; init; }

    public string Id { get; init; } = "";

    public string Supplier { get; init; } = "";

    public string Content { get; init; } = "";
}

/// <summary>A row of <c>price_lists</c> with the number of its offers and the name that its first one writes, as far as it is asked for.</summary>
internal sealed class PriceListRow
{
    public string Supplier { get; init; } = "";

    public string UpdatedAt { get; init; } = "";

    public int Offers { get; init; }

    public string? Name { get; init; }

    public string? Terms { get; init; }

    public string? Currency { get; init; }
}
