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
        return [.. SupplierOrders.Of(problem, plan.Purchases).Select(order => new ShoppingList(
            order.IsAnywhere ? null : order.Supplier,
            [.. order.Wood.Select(purchase => ResultMapping.ToRecord(purchase, plan.Purchases, currency, catalogue))],
            [.. order.Items.Select(item => DesignMapping.ToRecord(item, currency))],
            MoneyText.ToDecimal(order.Total, currency),
            SupplierOrders.NameOf(problem, order.Supplier),
            MoneyText.ToDecimal(order.Charge.Delivery, currency),
            MoneyText.ToDecimal(order.Charge.TopUp, currency)))];
    }

    /// <summary>The same in the words of the counter, for a person to take along.</summary>
    public static IReadOnlyList<CounterList> AtCounter(Plan plan, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var currency = problem.Shop.Currency;
        return [.. SupplierOrders.Of(problem, plan.Purchases).Select(order => new CounterList(
            order.IsAnywhere ? null : order.Supplier,
            SupplierOrders.NameOf(problem, order.Supplier),
            [.. order.Wood.GroupBy(purchase => purchase.Offer.Offer.Id, StringComparer.Ordinal).Select(wood => ToRecord([.. wood], problem, catalogue))],
            [.. order.Items.Select(item => DesignMapping.ToRecord(item, currency))],
            MoneyText.ToDecimal(order.Goods, currency),
            MoneyText.ToDecimal(order.Charge.Delivery, currency),
            MoneyText.ToDecimal(order.Charge.TopUp, currency),
            MoneyText.ToDecimal(order.Total, currency)))];
    }

    private static CounterWood ToRecord(IReadOnlyList<Purchase> wood, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var (offer, currency) = (wood[0].Offer.Offer, problem.Shop.Currency);
        return new CounterWood(
            offer.Id, offer.Name, offer.Species,
            ShoppingText.Wood(offer, catalogue.NameOf(offer.Species), problem.Shop.Unit), ShoppingText.Quantity(wood), ShoppingText.Rate(wood, currency),
            offer.Kind == BoardKind.Sheet ? null : decimal.Round(wood.Sum(purchase => BoardMeasure.BoardFeet(purchase.Offer.Size) * purchase.Count), 3),
            [.. wood.Select(purchase => new CounterPieces(
                purchase.Count, ShoppingText.Size(purchase, problem.Shop.Unit), ShopSize(purchase), MoneyText.ToDecimal(purchase.Offer.Price, currency),
                MoneyText.ToDecimal(purchase.Cost, currency)))],
            ShoppingText.Advice(offer), MoneyText.ToDecimal(new Money(wood.Sum(purchase => purchase.Cost.MinorUnits)), currency));
    }

    private static SizeRecord ShopSize(Purchase purchase) => Shops.ShopMapping.ToRecord(purchase.Offer.Size);
}
