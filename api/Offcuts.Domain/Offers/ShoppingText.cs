using System.Globalization;

namespace Offcuts.Domain;

/// <summary>What to ask for at the counter, in words.</summary>
public static class ShoppingText
{
    /// <summary>The wood of an offer: <c>4/4 rough white ash</c>.</summary>
    /// <param name="offer">The offer.</param>
    /// <param name="species">Name of its species.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Wood(Offer offer, string species, DisplayUnit unit)
    {
        var surface = (offer.Kind, offer.Surface) switch
        {
            (BoardKind.Sheet, _) => "",
            (_, Surface.Rough) => "rough ",
            (_, Surface.SkipPlaned) => "skip-planed ",
            (_, Surface.Surfaced) => "surfaced ",
        };
        return $"{YardText.Thickness(offer.Kind, offer.Surface, offer.Thickness, unit)} {surface}{species}";
    }

    /// <summary>How much of an offer, as it is counted at the counter: <c>12.4 board feet</c>, <c>14 ft</c>, <c>3 pieces</c>.</summary>
    /// <param name="wood">All that is bought of one offer.</param>
    public static string Quantity(IReadOnlyList<Purchase> wood)
    {
        var units = wood.Sum(purchase => StepPrices.Units(purchase.Offer) * purchase.Count);
        return wood[0].Offer.Offer.Form switch
        {
            ByVolume { Unit: VolumeUnit.BoardFoot } => string.Create(CultureInfo.InvariantCulture, $"{units:0.0} board feet"),
            ByVolume => string.Create(CultureInfo.InvariantCulture, $"{units:0.0000} cubic metres"),
            ByRunningLength { Unit: RunningUnit.Foot } => string.Create(CultureInfo.InvariantCulture, $"{units:0.##} ft"),
            ByRunningLength => string.Create(CultureInfo.InvariantCulture, $"{units:0.###} m"),
            _ => Pieces((int)units),
        };
    }

    /// <summary>What one unit costs: <c>5.75 USD a board foot</c>.</summary>
    /// <param name="wood">All that is bought of one offer.</param>
    /// <param name="currency">The shop's currency.</param>
    public static string Rate(IReadOnlyList<Purchase> wood, string currency)
    {
        var offer = wood[0].Offer.Offer;
        var price = StepPrices.UnitPrice(offer, wood.Select(purchase => (purchase.Offer, purchase.Count)));
        return $"{MoneyText.Format(price, currency)} a {Unit(offer.Form)}";
    }

    /// <summary>The pieces of one size: <c>2 pieces, each at least 5" wide and 8 ft long</c>.</summary>
    /// <param name="purchase">The pieces.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Size(Purchase purchase, DisplayUnit unit)
    {
        var size = purchase.Offer.Size;
        var face = YardText.Face(size.Width, size.Length, purchase.Offer.Offer.Form is ByVolume, unit);
        return purchase.Count == 1 ? $"1 piece, {face}" : $"{Pieces(purchase.Count)}, each {face}";
    }

    /// <summary>What to mind about an offer at the counter; null if nothing.</summary>
    public static string? Advice(Offer offer) =>
        offer.Form is ByVolume ? "random widths and lengths: take pieces no narrower and no shorter" : null;

    private static string Pieces(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "piece" : "pieces")}");

    private static string Unit(OfferForm form) => form switch
    {
        ByVolume { Unit: VolumeUnit.BoardFoot } => "board foot",
        ByVolume => "cubic metre",
        ByRunningLength { Unit: RunningUnit.Foot } => "foot",
        ByRunningLength => "metre",
        _ => "piece",
    };
}
