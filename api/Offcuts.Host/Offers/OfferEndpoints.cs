using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Offers;

/// <summary><c>/v1/price-lists</c> and <c>/v1/offers</c>.</summary>
internal static class OfferEndpoints
{
    public static void MapOffers(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/price-lists", ["GET", "HEAD"], ListPriceLists);
        app.MapPost("/v1/price-lists", StoreAsync);
        app.MapMethods("/v1/price-lists/{supplier}", ["GET", "HEAD"], GetPriceList);
        app.MapPut("/v1/price-lists/{supplier}", ReplaceAsync);
        app.MapDelete("/v1/price-lists/{supplier}", Delete);
        app.MapMethods("/v1/offers", ["GET", "HEAD"], List);
    }

    private static Ok<PriceLists> ListPriceLists(OfferStore offers) => TypedResults.Ok(new PriceLists(
        [.. offers.ListSuppliers().Select(list => new PriceListSummary(list.Supplier, list.UpdatedAt, list.Offers, list.Name))]));

    private static Ok<PriceListRecord> GetPriceList(string supplier, OfferStore offers, Workshop workshop)
    {
        var (updated, found, terms) = offers.Find(supplier) ?? throw NoPriceList(supplier);
        var records = Read(found, workshop);
        return TypedResults.Ok(new PriceListRecord(supplier, updated, records, records[0].SupplierName, OfferMapping.ReadTerms(terms)));
    }

    private static async Task<Results<Created<PriceListRecord>, Ok<PriceListRecord>>> StoreAsync(
        HttpRequest request, PriceListReader reader, OfferStore store, Workshop workshop, CancellationToken cancellationToken) =>
        Replace(await reader.ReadAsync(null, request, cancellationToken), store, workshop);

    private static async Task<Results<Created<PriceListRecord>, Ok<PriceListRecord>>> ReplaceAsync(
        string supplier, HttpRequest request, PriceListReader reader, OfferStore store, Workshop workshop, CancellationToken cancellationToken) =>
        Replace(await reader.ReadAsync(supplier, request, cancellationToken), store, workshop);

    private static Results<Created<PriceListRecord>, Ok<PriceListRecord>> Replace(ReadPriceList list, OfferStore store, Workshop workshop)
    {
        var (updated, isNew) = store.Replace(list.Supplier, [.. list.Offers.Zip(list.Records, (offer, record) => new StoredOffer(
            offer.Id, offer.Species, offer.Kind, offer.Thickness, JsonSerializer.Serialize(record, WireJson.Default.OfferRecord)))],
            list.Currency, list.Terms is { } terms ? JsonSerializer.Serialize(terms, WireJson.Default.TermsRecord) : null);
        var answer = new PriceListRecord(list.Supplier, updated, Named(list.Records, workshop), list.SupplierName, list.Terms);
        return isNew ? TypedResults.Created($"/v1/price-lists/{list.Supplier}", answer) : TypedResults.Ok(answer);
    }

    private static NoContent Delete(string supplier, OfferStore offers) =>
        offers.Delete(supplier) ? TypedResults.NoContent() : throw NoPriceList(supplier);

    private static Ok<OfferPage> List(HttpRequest request, OfferStore offers, Workshop workshop)
    {
        var reader = new QueryReader(request.Query, "supplier", "species", "kind", "minThicknessMm", "maxThicknessMm");
        var filter = new OfferFilter
        {
            Supplier = reader.Text("supplier"),
            Species = reader.Species("species", workshop.Catalogue()),
            Kind = reader.Word<BoardKind>("kind"),
            MinThickness = reader.Size("minThicknessMm"),
            MaxThickness = reader.Size("maxThicknessMm"),
        };
        var (after, limit) = reader.Page();
        var (found, next) = offers.List(filter, after ?? 0, limit);
        return TypedResults.Ok(new OfferPage(Read(found, workshop), QueryReader.Next(request.HttpContext, next)));
    }

    private static IReadOnlyList<OfferRecord> Read(IReadOnlyList<string> contents, Workshop workshop) =>
        Named([.. contents.Select(content => JsonSerializer.Deserialize(content, WireJson.Default.OfferRecord)!)], workshop);

    // Names of species are the catalogue's of now, so they are not stored with the offers.
    private static IReadOnlyList<OfferRecord> Named(IReadOnlyList<OfferRecord> records, Workshop workshop)
    {
        var catalogue = workshop.Catalogue();
        return [.. records.Select(record => record with { SpeciesName = catalogue.NameOf(record.Species) })];
    }

    private static OffcutsException NoPriceList(string supplier) =>
        new(ErrorCode.NotFound, $"There is no price list of '{supplier}'. List the price lists to see which there are.");
}
