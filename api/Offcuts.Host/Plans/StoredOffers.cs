using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Offers;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>What the shop can buy, as it is stored.</summary>
internal sealed class StoredOffers(OfferStore store)
{
    /// <summary>All offers.</summary>
    public List<Offer> List(Shop shop, SpeciesCatalogue catalogue, Faults faults)
    {
        var (found, _) = store.List(new OfferFilter(), 0, Limits.MaxQuantity);
        return ProblemMapping.ToOffers(
            [.. found.Select(content => JsonSerializer.Deserialize(content, WireJson.Default.OfferRecord)!)],
            catalogue, shop.Currency, "#/offers", faults);
    }

    /// <summary>What their suppliers ask beyond the prices.</summary>
    public List<SupplierTerms> Terms(Shop shop, Faults faults) => [.. store.ListTerms().Select(terms =>
        OfferMapping.ToTerms(terms.Supplier, OfferMapping.ReadTerms(terms.Terms), shop.Currency, "#/terms", faults))];

    /// <summary>What wood is worth by them: the rates with which plans are made.</summary>
    public WorthRates Rates(Shop shop, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        var offers = List(shop, catalogue, faults);
        faults.ThrowIfAny();
        return OfferRates.Of(offers);
    }
}
