using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Designs;

namespace Offcuts.Host.Plans;

/// <summary>What to buy where.</summary>
internal static class ShoppingLists
{
    /// <summary>One list for each supplier by name, wood and items together; last the items that may be bought anywhere.</summary>
    public static IReadOnlyList<ShoppingList> Of(Plan plan, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var currency = problem.Shop.Currency;
        // A design names a supplier as people do, an offer as paths do.
        var wood = plan.Purchases.ToLookup(purchase => Slug.Of(purchase.Offer.Offer.Supplier), StringComparer.Ordinal);
        var items = problem.Design.Items.ToLookup(item => item.Supplier is { } name ? Slug.Of(name) : "", StringComparer.Ordinal);
        return [.. wood.Select(group => group.Key).Union(items.Select(group => group.Key), StringComparer.Ordinal)
            .OrderBy(supplier => supplier.Length == 0).ThenBy(supplier => supplier, StringComparer.Ordinal)
            .Select(supplier => new ShoppingList(
                supplier.Length == 0 ? null : supplier,
                [.. wood[supplier].Select(purchase => ResultMapping.ToRecord(purchase, currency, catalogue))],
                [.. items[supplier].Select(item => DesignMapping.ToRecord(item, currency))],
                MoneyText.ToDecimal(
                    new Money(wood[supplier].Sum(purchase => purchase.Cost.MinorUnits) + items[supplier].Sum(item => (item.UnitPrice * item.Quantity).MinorUnits)),
                    currency),
                Name(supplier, problem)))];
    }

    // The price list's spelling before the design's.
    private static string? Name(string supplier, PlanningProblem problem) =>
        problem.Offers.Where(offer => Slug.Of(offer.Supplier) == supplier).Select(offer => offer.SupplierName)
            .Concat(problem.Design.Items.Select(item => item.Supplier).Where(name => name is not null && Slug.Of(name) == supplier))
            .FirstOrDefault(name => name is not null);
}
