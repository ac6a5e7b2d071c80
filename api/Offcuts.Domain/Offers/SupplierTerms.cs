namespace Offcuts.Domain;

/// <summary>What a supplier asks beyond the prices of what it sells.</summary>
/// <param name="Supplier">Which supplier.</param>
public sealed record SupplierTerms(string Supplier)
{
    /// <summary>What an order costs to bring, whatever its size; nothing where it is free or fetched.</summary>
    public Money Delivery { get; init; }

    /// <summary>The least that an order must come to, delivery not counted; what an order lacks of it is paid all the same.</summary>
    public Money MinimumOrder { get; init; }

    /// <summary>Whether there are any.</summary>
    public bool Any => Delivery > Money.Zero || MinimumOrder > Money.Zero;

    /// <summary>Everything that is wrong with them, with pointers such as <c>#/delivery</c>; empty if nothing is.</summary>
    public IReadOnlyList<InputFault> Check()
    {
        var faults = new FaultList();
        faults.Text("#/supplier", Supplier, Limits.MaxName, required: true);
        faults.Price("#/delivery", Delivery);
        faults.Price("#/minimumOrder", MinimumOrder);
        return faults.Found;
    }
}
