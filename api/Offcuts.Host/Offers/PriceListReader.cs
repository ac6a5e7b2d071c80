using Offcuts.Contracts;
using Offcuts.Documents;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;

namespace Offcuts.Host.Offers;

/// <summary>A price list as it was read: its offers and each as it is written on the wire, the supplier's terms (null for none), and the currency of its prices.</summary>
internal sealed record ReadPriceList(string Supplier, string? SupplierName, IReadOnlyList<Offer> Offers, IReadOnlyList<OfferRecord> Records, TermsRecord? Terms, string Currency);

/// <summary>Reads a supplier's price list, as people write it or as JSON.</summary>
internal sealed class PriceListReader(Workshop workshop)
{
    /// <param name="inPath">The supplier as the path names it; null if only the list does.</param>
    /// <param name="request">The request.</param>
    /// <param name="cancellationToken">Gives up reading.</param>
    public async Task<ReadPriceList> ReadAsync(string? inPath, HttpRequest request, CancellationToken cancellationToken)
    {
        if (inPath is not null && inPath != Slug.Of(inPath))
        {
            throw new OffcutsException(
                ErrorCode.Invalid, $"'{inPath}' cannot stand for a supplier: use lower-case words with hyphens, for instance riverbend.", new InputFault("#", "Mend the last part of the path."));
        }

        var (shop, catalogue) = workshop.Now();
        var faults = new Faults();
        var (supplier, name, offers, terms) = RequestBody.IsDocument(request)
            ? ReadDocument(inPath, await RequestBody.ReadTextAsync(request, cancellationToken), shop, catalogue, faults)
            : ReadEntries(inPath, await RequestBody.ReadAsync(request, WireJson.Default.PriceListEntry, cancellationToken), shop, catalogue, faults);
        RefuseDoubles(offers, faults);
        faults.ThrowIfAny();
        return new(supplier, name, offers, [.. offers.Select(offer => OfferMapping.ToRecord(offer, shop.Currency))], OfferMapping.ToRecord(terms, shop.Currency), shop.Currency);
    }

    private static (string Supplier, string? Name, List<Offer> Offers, SupplierTerms Terms) ReadEntries(
        string? inPath, PriceListEntry list, Shop shop, SpeciesCatalogue catalogue, Faults faults)
    {
        var supplier = Supplier(inPath, list.Supplier, faults);
        return (supplier, list.Supplier, [.. faults.Entries("#/offers", list.Offers, Limits.MaxOffers, least: 1).Select(entry => OfferMapping.ToOffer(
            OfferMapping.WithId(entry.Entry, supplier, list.Supplier, entry.Index), catalogue, shop.Currency, $"#/offers/{entry.Index}", faults))],
            OfferMapping.ToTerms(supplier, list.Terms, shop.Currency, "#/terms", faults));
    }

    private static (string Supplier, string? Name, List<Offer> Offers, SupplierTerms Terms) ReadDocument(
        string? inPath, string text, Shop shop, SpeciesCatalogue catalogue, Faults faults)
    {
        var list = PriceListDocument.Parse(text, shop.Unit, catalogue, shop.Currency);
        var supplier = Supplier(inPath, list.Supplier, faults);
        return (supplier, list.Supplier, [.. list.Offers.Select(offer => offer with { Supplier = supplier, SupplierName = list.Supplier })], list.Terms with { Supplier = supplier });
    }

    private static string Supplier(string? inPath, string? named, Faults faults)
    {
        var slug = named is null ? inPath : Slug.Of(named);
        if (string.IsNullOrEmpty(slug))
        {
            faults.Add("#/supplier", "The list does not say whose it is: give the supplier's name, with a letter or digit in it.");
            return "nobody";
        }

        if (inPath is not null && slug != inPath)
        {
            faults.Add("#/supplier", $"The list is of '{named}' but was sent to '{inPath}': send it to /v1/price-lists/{slug}.");
        }

        return slug;
    }

    private static void RefuseDoubles(List<Offer> offers, Faults faults)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, offer) in offers.Index())
        {
            if (!ids.Add(offer.Id))
            {
                faults.Add($"#/offers/{index}/id", $"'{offer.Id}' stands twice in the list: give each offer an id of its own.");
            }
        }
    }
}
