namespace Offcuts.Domain;

/// <summary>What one supplier sells.</summary>
/// <param name="Supplier">Who sells it.</param>
/// <param name="Offers">The offers, in the list's order; their ids are unique.</param>
public sealed record PriceList(string Supplier, IReadOnlyList<Offer> Offers)
{
    /// <summary>What the supplier asks beyond its prices.</summary>
    public SupplierTerms Terms { get; init; } = new(Supplier);
}
