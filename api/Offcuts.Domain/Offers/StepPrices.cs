namespace Offcuts.Domain;

/// <summary>Prices that depend on how much is bought of an offer.</summary>
public static class StepPrices
{
    private static readonly Dimensions BoardFoot = new(Length.FromInches(1), Length.FromInches(12), Length.FromInches(12));
    private static readonly Dimensions CubicMetre = new(Length.FromMillimetres(1000), Length.FromMillimetres(1000), Length.FromMillimetres(1000));

    /// <summary>The price of one unit of an offer before any step.</summary>
    public static Money UnitPrice(Offer offer) => offer.Form switch
    {
        ByThePiece piece => piece.PricePerPiece,
        ByRunningLength running => running.Price,
        ByVolume volume => volume.Price,
        _ => throw Unknown(offer),
    };

    /// <summary>The offer at another price of one unit, whatever is bought of it.</summary>
    public static Offer At(Offer offer, Money unitPrice) => offer with
    {
        Steps = [],
        Form = offer.Form switch
        {
            ByThePiece piece => piece with { PricePerPiece = unitPrice },
            ByRunningLength running => running with { Price = unitPrice },
            ByVolume volume => volume with { Price = unitPrice },
            _ => throw Unknown(offer),
        },
    };

    /// <summary>The price of one piece of a size where as much is bought of its offer as makes it cheapest.</summary>
    public static Money LeastPrice(OfferSize size) => size.Offer.Steps.Count == 0
        ? size.Price
        : OfferSize.PriceOf(At(size.Offer, size.Offer.Steps.Select(step => step.Price).Append(UnitPrice(size.Offer)).Min()), size.Size);

    /// <summary>How many units of its form one piece of a size is, as it is told: rounded.</summary>
    public static decimal Units(OfferSize size) => Measure(size) / UnitMeasure(size.Offer);

    /// <summary>The price of one unit where so much is bought of an offer.</summary>
    /// <param name="offer">The offer.</param>
    /// <param name="bought">Everything that is bought of it: sizes and how many of each.</param>
    public static Money UnitPrice(Offer offer, IEnumerable<(OfferSize Size, int Count)> bought)
    {
        var measure = bought.Sum(each => Measure(each.Size) * each.Count);
        var unit = UnitMeasure(offer);
        return offer.Steps.LastOrDefault(step => measure >= step.From * unit)?.Price ?? UnitPrice(offer);
    }

    /// <summary>The purchases at the prices that their quantities reach.</summary>
    public static IReadOnlyList<Purchase> Priced(IReadOnlyList<Purchase> purchases)
    {
        var reached = purchases.GroupBy(purchase => purchase.Offer.Offer.Id, StringComparer.Ordinal).ToDictionary(
            offer => offer.Key,
            offer => UnitPrice(offer.First().Offer.Offer, offer.Select(purchase => (purchase.Offer, purchase.Count))),
            StringComparer.Ordinal);
        return [.. purchases.Select(purchase => purchase.Offer.Offer.Steps.Count == 0 ? purchase : purchase with
        {
            Offer = purchase.Offer with { Price = OfferSize.PriceOf(At(purchase.Offer.Offer, reached[purchase.Offer.Offer.Id]), purchase.Offer.Size) },
        })];
    }

    // In whole ticks, so that a quantity that is just reached is not missed by a rounding.
    private static decimal Measure(OfferSize size) => size.Offer.Form switch
    {
        ByThePiece => 1,
        ByRunningLength => size.Size.Length.Ticks,
        ByVolume => Ticks(size.Size),
        _ => throw Unknown(size.Offer),
    };

    private static decimal UnitMeasure(Offer offer) => offer.Form switch
    {
        ByThePiece => 1,
        ByRunningLength { Unit: RunningUnit.Foot } => BoardFoot.Length.Ticks,
        ByRunningLength => CubicMetre.Length.Ticks,
        ByVolume { Unit: VolumeUnit.BoardFoot } => Ticks(BoardFoot),
        ByVolume => Ticks(CubicMetre),
        _ => throw Unknown(offer),
    };

    private static decimal Ticks(Dimensions size) => (decimal)size.Thickness.Ticks * size.Width.Ticks * size.Length.Ticks;

    private static ArgumentException Unknown(Offer offer) => new($"Unknown form of offer {offer.Id}.", nameof(offer));
}
