using Offcuts.Contracts;
using Offcuts.Documents;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;

namespace Offcuts.Host.Offers;

/// <summary>Reads a supplier's price list, as people write it or as JSON.</summary>
internal sealed class PriceListReader(Workshop workshop)
{
    private const int MaxOffers = 1000;

    /// <summary>The offers of the list, each also as it is written on the wire.</summary>
    public async Task<IReadOnlyList<(Offer Offer, OfferRecord Record)>> ReadAsync(
        string supplier, HttpRequest request, CancellationToken cancellationToken)
    {
        if (supplier.Length > 80 || supplier != Slug.Of(supplier))
        {
            throw new OffcutsException(
                ErrorCode.Invalid, $"'{supplier}' cannot stand for a supplier: use lower-case words with hyphens, for instance {(Slug.Of(supplier) is { Length: > 0 and <= 80 } slug ? slug : "riverbend")}.", new InputFault("#", "Mend the last part of the path."));
        }

        var shop = workshop.Shop();
        var catalogue = workshop.Catalogue();
        var faults = new Faults();
        var offers = RequestBody.IsDocument(request)
            ? ReadDocument(supplier, await RequestBody.ReadTextAsync(request, cancellationToken), shop, catalogue, faults)
            : ReadEntries(supplier, await RequestBody.ReadAsync(request, WireJson.Default.PriceListEntry, cancellationToken), shop, catalogue, faults);
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, offer) in offers.Index())
        {
            if (!ids.Add(offer.Id))
            {
                faults.Add($"#/offers/{index}/id", $"'{offer.Id}' stands twice in the list: give each offer an id of its own.");
            }
        }

        faults.ThrowIfAny();
        return [.. offers.Select(offer => (offer, OfferMapping.ToRecord(offer, shop.Currency)))];
    }

    private static List<Offer> ReadEntries(string supplier, PriceListEntry list, Shop shop, SpeciesCatalogue catalogue, Faults faults) =>
        [.. faults.Entries("#/offers", list.Offers, MaxOffers, least: 1).Select(entry => OfferMapping.ToOffer(
            OfferMapping.WithId(entry.Entry, supplier, entry.Index), catalogue, shop.Currency, $"#/offers/{entry.Index}", faults))];

    private static List<Offer> ReadDocument(string supplier, string text, Shop shop, SpeciesCatalogue catalogue, Faults faults)
    {
        var list = PriceListDocument.Parse(text, shop.Unit, catalogue, shop.Currency);
        if (Slug.Of(list.Supplier) != supplier)
        {
            faults.Add("#/supplier", $"The list is of '{list.Supplier}' but was sent to '{supplier}': send it to /v1/price-lists/{Slug.Of(list.Supplier)}.");
        }

        return [.. list.Offers.Select(offer => offer with { Supplier = supplier })];
    }
}
