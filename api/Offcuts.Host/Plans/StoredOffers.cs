using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Offers;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>What the shop can buy, as it is stored.</summary>
internal sealed class StoredOffers(OfferStore store)
{
    /// <summary>All offers.</summary>
    /// <exception cref="OffcutsException">Prices are in another currency than the shop's.</exception>
    public List<Offer> List(Shop shop, SpeciesCatalogue catalogue)
    {
        var lists = store.ListSuppliers();
        RefuseOther(lists, shop.Currency);
        var faults = new Faults();
        return Read(Offers(shop, catalogue, faults), lists, shop.Currency, faults);
    }

    /// <summary>Whether all prices can be those of the shop's currency.</summary>
    public bool AreReadable(Shop shop, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        Offers(shop, catalogue, faults);
        return !faults.Any;
    }

    /// <summary>What their suppliers ask beyond the prices.</summary>
    /// <exception cref="OffcutsException">Amounts are in another currency than the shop's.</exception>
    public List<SupplierTerms> Terms(Shop shop)
    {
        var lists = store.ListSuppliers();
        RefuseOther(lists, shop.Currency);
        var faults = new Faults();
        List<SupplierTerms> terms = [.. store.ListTerms().Select(terms =>
            OfferMapping.ToTerms(terms.Supplier, OfferMapping.ReadTerms(terms.Terms), shop.Currency, "#/terms", faults))];
        return Read(terms, lists, shop.Currency, faults);
    }

    /// <summary>What wood is worth by them: the rates with which plans are made.</summary>
    /// <exception cref="OffcutsException">Prices are in another currency than the shop's.</exception>
    public WorthRates Rates(Shop shop, SpeciesCatalogue catalogue) => OfferRates.Of(List(shop, catalogue));

    private List<Offer> Offers(Shop shop, SpeciesCatalogue catalogue, Faults faults)
    {
        var (found, _) = store.List(new OfferFilter(), 0, Limits.MaxQuantity);
        return ProblemMapping.ToOffers(
            [.. found.Select(content => JsonSerializer.Deserialize(content, WireJson.Default.OfferRecord)!)], catalogue, shop.Currency, "#/offers", faults);
    }

    private static void RefuseOther(IReadOnlyList<StoredPriceList> lists, string currency)
    {
        if (lists.FirstOrDefault(list => list.Currency is { } own && own != currency) is { } other)
        {
            throw new OffcutsException(
                ErrorCode.Conflict,
                $"The price list of {other.Name ?? other.Supplier} is in {other.Currency}, but the shop counts in {currency}. Set the shop's currency to {other.Currency}, or delete the list and store it in {currency}.");
        }
    }

    // What was checked when it was stored can only be wrong since the shop has another currency, in lists from before theirs was kept.
    private static List<T> Read<T>(List<T> read, IReadOnlyList<StoredPriceList> lists, string currency, Faults faults) => faults.Found.Count == 0 ? read
        : throw new OffcutsException(
            ErrorCode.Conflict,
            $"The price lists ({CurrencyChange.Names(lists)}) cannot be read in {currency}, the shop's currency: {faults.Found[0].Detail} Set the shop's currency back to theirs, or delete the lists and store them in {currency}.");
}
