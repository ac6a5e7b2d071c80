using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>What to buy where, in the words of the counter.</summary>
internal static class ShoppingSection
{
    public static XElement Of(PlanDocument document)
    {
        var (purchases, items) = (document.Plan.Purchases, document.Problem.Design.Items);
        // A design names a supplier as people do, an offer as paths do.
        var suppliers = purchases.Select(purchase => Slug.Of(purchase.Offer.Offer.Supplier))
            .Concat(items.Select(item => Slug.Of(item.Supplier ?? ""))).Distinct().Order(StringComparer.Ordinal).OrderBy(name => name.Length == 0);
        return Markup.Html(
            "section", null, Markup.Html("h2", null, "Shopping list"),
            purchases.Count + items.Count == 0 ? Markup.Html("p", null, "Nothing to buy: all of it comes from the rack.") : null,
            suppliers.Select(supplier => Supplier(document, supplier)));
    }

    private static XElement Supplier(PlanDocument document, string supplier)
    {
        var purchases = document.Plan.Purchases.Where(purchase => Slug.Of(purchase.Offer.Offer.Supplier) == supplier).ToList();
        var items = document.Problem.Design.Items.Where(item => Slug.Of(item.Supplier ?? "") == supplier).ToList();
        var name = document.Problem.Offers.FirstOrDefault(offer => offer.SupplierName is not null && Slug.Of(offer.Supplier) == supplier)?.SupplierName
            ?? items.FirstOrDefault()?.Supplier ?? purchases.FirstOrDefault()?.Offer.Offer.Supplier ?? supplier;
        var total = purchases.Select(purchase => purchase.Cost).Concat(items.Select(item => item.UnitPrice * item.Quantity))
            .Aggregate(Domain.Money.Zero, (sum, cost) => sum + cost);
        return Markup.Html(
            "div", "supplier",
            Markup.Html("h3", null, $"{(supplier.Length == 0 ? "Any supplier" : name)}: {Money(total, document)}"),
            Table.Of(["", "How many", "What to ask for", "Price each", "Price"],
                purchases.GroupBy(purchase => purchase.Offer.Offer.Id).SelectMany(offer => Wood(document, [.. offer]))
                    .Concat(items.Select(item => Item(document, item)))));
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
        return offer.Form switch
        {
            ByVolume { Unit: VolumeUnit.BoardFoot } volume => FormattableString.Invariant(
                $"{boardFeet:0.0} board feet in all at {Money(volume.Price, document)} a board foot; random widths and lengths, so take pieces no narrower and no shorter."),
            ByVolume volume => FormattableString.Invariant(
                $"{boardFeet * 0.002359737216m:0.0000} m³ in all at {Money(volume.Price, document)} a cubic metre; random widths and lengths, so take pieces no narrower and no shorter."),
            ByRunningLength running => $"sold by running length at {Money(running.Price, document)} a {(running.Unit == RunningUnit.Foot ? "foot" : "metre")}.",
            _ => "sold by the piece.",
        };
    }

    private static object?[] Item(PlanDocument document, BoughtItem item) =>
        [Table.Tick("bought"), FormattableString.Invariant($"{item.Quantity}"), item.Name, Amount(item.UnitPrice, document), Amount(item.UnitPrice * item.Quantity, document)];

    private static XElement Amount(Money amount, PlanDocument document) => Markup.Html("span", "money", Money(amount, document));

    private static string Money(Money amount, PlanDocument document) => MoneyText.Format(amount, document.Problem.Shop.Currency);
}
