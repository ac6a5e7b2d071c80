using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>What to buy where, in the words of the counter.</summary>
internal static class ShoppingSection
{
    public static XElement Of(PlanDocument document)
    {
        var orders = SupplierOrders.Of(document.Problem, document.Plan.Purchases);
        return Markup.Html(
            "section", null, Markup.Html("h2", null, "Shopping list"),
            orders.Count == 0 ? Markup.Html("p", null, "Nothing to buy: all of it comes from the rack.") : null,
            orders.Select(order => Supplier(document, order)));
    }

    private static XElement Supplier(PlanDocument document, SupplierOrder order)
    {
        var name = order.IsAnywhere ? "Any supplier" : SupplierOrders.NameOf(document.Problem, order.Supplier) ?? order.Wood[0].Offer.Offer.Supplier;
        return Markup.Html(
            "div", "supplier",
            Markup.Html("h3", null, $"{name}: {Money(order.Total, document)}"),
            Table.Of(["", "How many", "What to ask for", "Price each", "Price"],
                order.Wood.GroupBy(purchase => purchase.Offer.Offer.Id).SelectMany(offer => Wood(document, [.. offer]))
                    .Concat(order.Items.Select(item => Item(document, item)))
                    .Concat(Charges(document, order))));
    }

    private static IEnumerable<IReadOnlyList<object?>> Charges(PlanDocument document, SupplierOrder order)
    {
        if (order.Charge.Delivery > Domain.Money.Zero)
        {
            yield return ["\u00a0", "", "delivery", "", Amount(order.Charge.Delivery, document)];
        }

        if (order.Charge.TopUp > Domain.Money.Zero)
        {
            yield return
            [
                "\u00a0", "", $"up to the minimum order of {Money(order.Goods + order.Charge.TopUp, document)}: paid all the same, so take more for it", "",
                Amount(order.Charge.TopUp, document),
            ];
        }
    }

    private static IEnumerable<IReadOnlyList<object?>> Wood(PlanDocument document, IReadOnlyList<Purchase> purchases)
    {
        var offer = purchases[0].Offer.Offer;
        foreach (var purchase in purchases)
        {
            yield return
            [
                Table.Tick("bought"), FormattableString.Invariant($"{purchase.Count}"),
                new object?[]
                {
                    $"{What(document, offer)}, {Markings(purchase.Offer, document.Unit)}",
                    offer.Name is { } label ? Markup.Html("div", "aside", $"listed as: {label}") : null,
                    purchase == purchases[^1] ? Markup.Html("div", "aside", Advice(offer, purchases, document)) : null,
                },
                Amount(purchase.Offer.Price, document), Amount(purchase.Cost, document),
            ];
        }
    }

    private static string What(PlanDocument document, Offer offer)
    {
        var wood = $"{YardText.Thickness(offer.Kind, offer.Surface, offer.Thickness, document.Unit)} {Words.Wood(document, offer.Species, offer.Kind, offer.Surface)}";
        return $"{wood}, {Words.Look(offer.Appearance)}";
    }

    private static string Markings(OfferSize size, DisplayUnit unit) =>
        YardText.Face(size.Size.Width, size.Size.Length, size.Offer.Form is ByVolume, unit);

    private static string Advice(Offer offer, IReadOnlyList<Purchase> purchases, PlanDocument document)
    {
        var boardFeet = purchases.Sum(purchase => purchase.Count * BoardMeasure.BoardFeet(purchase.Offer.Size));
        var unitPrice = StepPrices.UnitPrice(offer, purchases.Select(purchase => (purchase.Offer, purchase.Count)));
        return offer.Form switch
        {
            ByVolume { Unit: VolumeUnit.BoardFoot } => FormattableString.Invariant(
                $"{boardFeet:0.0} board feet in all at {Money(unitPrice, document)} a board foot; random widths and lengths, so take pieces no narrower and no shorter."),
            ByVolume => FormattableString.Invariant(
                $"{boardFeet * BoardMeasure.CubicMetresPerBoardFoot:0.0000} m³ in all at {Money(unitPrice, document)} a cubic metre; random widths and lengths, so take pieces no narrower and no shorter."),
            ByRunningLength running => $"sold by running length at {Money(unitPrice, document)} a {(running.Unit == RunningUnit.Foot ? "foot" : "metre")}.",
            _ => "sold by the piece.",
        };
    }

    private static object?[] Item(PlanDocument document, BoughtItem item) =>
        [Table.Tick("bought"), FormattableString.Invariant($"{item.Quantity}"), item.Name, Amount(item.UnitPrice, document), Amount(item.Cost, document)];

    private static XElement Amount(Money amount, PlanDocument document) => Markup.Html("span", "money", Money(amount, document));

    private static string Money(Money amount, PlanDocument document) => MoneyText.Format(amount, document.Problem.Shop.Currency);
}
