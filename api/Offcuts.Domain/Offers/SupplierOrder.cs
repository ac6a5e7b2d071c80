namespace Offcuts.Domain;

/// <summary>All that is ordered from one supplier.</summary>
/// <param name="Supplier">The supplier as paths name it; empty for what may be bought anywhere.</param>
/// <param name="Wood">The wood.</param>
/// <param name="Items">What is bought ready made.</param>
/// <param name="Charge">What the supplier charges beyond the goods.</param>
public sealed record SupplierOrder(string Supplier, IReadOnlyList<Purchase> Wood, IReadOnlyList<BoughtItem> Items, SupplierCharge Charge)
{
    /// <summary>Whether it is bought wherever one happens to be.</summary>
    public bool IsAnywhere => Supplier.Length == 0;

    /// <summary>Price of the goods.</summary>
    public Money Goods => new(Wood.Sum(purchase => purchase.Cost.MinorUnits) + Items.Sum(item => item.Cost.MinorUnits));

    /// <summary>All that the supplier gets.</summary>
    public Money Total => Goods + Charge.Total;
}

/// <summary>What a supplier charges beyond the goods.</summary>
/// <param name="Supplier">The supplier as paths name it.</param>
/// <param name="Delivery">For bringing them.</param>
/// <param name="TopUp">What the order lacks of the least that the supplier takes; more goods can be had for it.</param>
public sealed record SupplierCharge(string Supplier, Money Delivery, Money TopUp)
{
    /// <summary>Both.</summary>
    public Money Total => Delivery + TopUp;
}
