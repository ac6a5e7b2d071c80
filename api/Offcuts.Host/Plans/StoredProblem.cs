using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>What of a problem a request gives itself; null for what is to be as it is stored.</summary>
internal sealed record GivenWood
{
    /// <summary>The boards that may be cut.</summary>
    public IReadOnlyList<Board>? Stock { get; init; }

    /// <summary>What can be bought. Where this is given, what is stored of suppliers' terms does not hold either.</summary>
    public IReadOnlyList<Offer>? Offers { get; init; }

    /// <summary>What suppliers ask beyond their prices.</summary>
    public IReadOnlyList<SupplierTerms>? Terms { get; init; }

    /// <summary>What wood is worth; null for what the offers say.</summary>
    public WorthRates? Rates { get; init; }

    /// <summary>How hard it is to get at places.</summary>
    public IReadOnlyDictionary<string, Reach>? Reaches { get; init; }

    /// <summary>The day of the plan; null for today.</summary>
    public DateOnly? Today { get; init; }
}

/// <summary>The problem that the store poses as it is now: its free boards, its offers and their terms, its places. Every question to the planner begins here.</summary>
internal sealed class StoredProblem(BoardStore boards, PlaceStore places, StoredOffers offers, Expiry expiry, TimeProvider clock)
{
    /// <summary>The problem of a design.</summary>
    /// <param name="design">What is to be built.</param>
    /// <param name="shop">How the shop works.</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <exception cref="OffcutsException">Prices are in another currency than the shop's.</exception>
    public PlanningProblem Of(Design design, Shop shop, SpeciesCatalogue catalogue) => Of(design, shop, catalogue, new GivenWood(), heldBy: null);

    /// <summary>The problem of a design, some of it as a request gives it; what is given is not looked up.</summary>
    /// <param name="design">What is to be built.</param>
    /// <param name="shop">How the shop works.</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="given">What the request gives.</param>
    /// <param name="heldBy">Id of a plan whose boards count as free; null for none.</param>
    /// <exception cref="OffcutsException">Stored prices are in another currency than the shop's.</exception>
    public PlanningProblem Of(Design design, Shop shop, SpeciesCatalogue catalogue, GivenWood given, string? heldBy)
    {
        expiry.Run();
        var wood = given.Offers ?? offers.List(shop, catalogue);
        return new PlanningProblem
        {
            Stock = given.Stock ?? boards.ListFree(heldBy),
            Offers = wood,
            Terms = given.Terms ?? (given.Offers is null ? offers.Terms(shop) : []),
            Design = design,
            Shop = shop,
            Rates = given.Rates ?? OfferRates.Of(wood),
            Reaches = given.Reaches ?? places.Reaches(),
            Today = given.Today ?? DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime),
        };
    }
}
