using Offcuts.Domain;

namespace Offcuts.Host.Plans;

/// <summary>What wood is worth to a shop that can buy it: its price at the cheapest supplier.</summary>
internal static class OfferRates
{
    /// <summary>For each species the least price of a board foot over all sizes on offer, rounded down; species without an offer take the default.</summary>
    public static WorthRates Of(IReadOnlyList<Offer> offers) => WorthRates.Default with
    {
        PerBoardFoot = offers.GroupBy(offer => offer.Species, StringComparer.Ordinal).ToDictionary(
            species => species.Key,
            species => new Money((long)decimal.Floor(species.SelectMany(OfferSize.Of).Min(PerBoardFoot))),
            StringComparer.Ordinal),
    };

    private static decimal PerBoardFoot(OfferSize size) => size.Price.MinorUnits / BoardMeasure.BoardFeet(size.Size);
}
