namespace Offcuts.Domain;

/// <summary>Sorts what is bought by supplier, and says what that costs beyond the goods.</summary>
public static class SupplierOrders
{
    /// <summary>One order for each supplier by name, wood and items together; last what may be bought anywhere.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="purchases">The wood to buy.</param>
    public static IReadOnlyList<SupplierOrder> Of(PlanningProblem problem, IReadOnlyList<Purchase> purchases)
    {
        // A design names a supplier as people do, an offer as paths do.
        var wood = purchases.ToLookup(purchase => Slug.Of(purchase.Offer.Offer.Supplier), StringComparer.Ordinal);
        var items = problem.Design.Items.ToLookup(item => item.Supplier is { } name ? Slug.Of(name) : "", StringComparer.Ordinal);
        return [.. wood.Select(group => group.Key).Union(items.Select(group => group.Key), StringComparer.Ordinal)
            .OrderBy(supplier => supplier.Length == 0).ThenBy(supplier => supplier, StringComparer.Ordinal)
            .Select(supplier => Charged(new SupplierOrder(
                supplier, [.. wood[supplier]], [.. items[supplier]], new SupplierCharge(supplier, Money.Zero, Money.Zero)), TermsOf(problem, supplier)))];
    }

    /// <summary>The terms of a supplier; none where it has none.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="supplier">The supplier as paths name it.</param>
    public static SupplierTerms TermsOf(PlanningProblem problem, string supplier) =>
        problem.Terms.FirstOrDefault(terms => supplier.Length > 0 && Slug.Of(terms.Supplier) == supplier) ?? new SupplierTerms(supplier);

    /// <summary>What every supplier after the first counts: see <see cref="Shop.SecondStop"/>.</summary>
    public static Money StopCost(PlanningProblem problem, IEnumerable<SupplierOrder> orders) =>
        problem.Shop.SecondStop * Math.Max(0, orders.Count(order => !order.IsAnywhere) - 1);

    /// <summary>The supplier's name as the price list writes it, else as the design does; null where neither does.</summary>
    /// <param name="problem">What was planned.</param>
    /// <param name="supplier">The supplier as paths name it.</param>
    public static string? NameOf(PlanningProblem problem, string supplier) =>
        problem.Offers.Where(offer => Slug.Of(offer.Supplier) == supplier).Select(offer => offer.SupplierName)
            .Concat(problem.Design.Items.Select(item => item.Supplier).Where(name => name is not null && Slug.Of(name) == supplier))
            .FirstOrDefault(name => name is not null);

    private static SupplierOrder Charged(SupplierOrder order, SupplierTerms terms) => order with
    {
        Charge = order.Charge with { Delivery = terms.Delivery, TopUp = terms.MinimumOrder > order.Goods ? terms.MinimumOrder - order.Goods : Money.Zero },
    };
}
