namespace Offcuts.Domain;

/// <summary>What is missing to build a design, in one line.</summary>
/// <param name="shop">The shop, for its unit.</param>
/// <param name="offers">The offers that purchases name.</param>
/// <param name="nameOf">The name of a species by its id.</param>
public sealed class FitText(Shop shop, IReadOnlyList<Offer> offers, Func<string, string> nameOf)
{
    private readonly Dictionary<string, Offer> byId = offers.ToDictionary(offer => offer.Id, StringComparer.Ordinal);

    /// <summary>For instance <c>buy 3 boards of 4/4 white oak and 2 Butt hinge; no wood for 1 Base</c>; <c>nothing</c> if nothing is missing.</summary>
    public string Lacks(FitOutcome outcome, Design design)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(design);
        List<string> bought =
        [
            .. outcome.Purchases.Select(purchase => (Kind: KindOf(purchase), purchase.Count)).GroupBy(purchase => purchase.Kind)
                .Select(alike => Wood(alike.Key, alike.Sum(purchase => purchase.Count))),
            .. design.Items.Select(item => FormattableString.Invariant($"{item.Quantity} {item.Name}")),
        ];
        List<string> all =
        [
            .. bought.Count > 0 ? [$"buy {Listed(bought)}"] : (string[])[],
            .. outcome.Missing.Count > 0
                ? [$"no wood for {Listed([.. outcome.Missing.Select(missing => FormattableString.Invariant($"{missing.Quantity} {missing.Name}"))])}"]
                : (string[])[],
        ];
        return all.Count > 0 ? string.Join("; ", all) : "nothing";
    }

    private (BoardKind Kind, Surface Surface, string Species, Length Thickness) KindOf(FitPurchase purchase)
    {
        var offer = byId[purchase.OfferId];
        return (offer.Kind, offer.Surface, offer.Species, purchase.Size.Thickness);
    }

    private string Wood((BoardKind Kind, Surface Surface, string Species, Length Thickness) kind, int count)
    {
        var piece = (kind.Kind, count) switch
        {
            (BoardKind.Sheet, 1) => "sheet",
            (BoardKind.Sheet, _) => "sheets",
            (_, 1) => "board",
            _ => "boards",
        };
        return FormattableString.Invariant($"{count} {piece} of {YardText.Thickness(kind.Kind, kind.Surface, kind.Thickness, shop.Unit)} {nameOf(kind.Species)}");
    }

    private static string Listed(List<string> things) =>
        things.Count == 1 ? things[0] : $"{string.Join(", ", things.SkipLast(1))} and {things[^1]}";
}
