using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Offers;

/// <summary><c>/v1/price-lists</c> and <c>/v1/offers</c>.</summary>
internal static class OfferEndpoints
{
    public static void MapOffers(this WebApplication app)
    {
        app.MapMethods("/v1/price-lists", ["GET", "HEAD"], ListPriceLists);
        app.MapPost("/v1/price-lists", StoreAsync);
        app.MapMethods("/v1/price-lists/{supplier}", ["GET", "HEAD"], GetPriceList);
        app.MapPut("/v1/price-lists/{supplier}", ReplaceAsync);
        app.MapDelete("/v1/price-lists/{supplier}", Delete);
        app.MapMethods("/v1/offers", ["GET", "HEAD"], List);
    }

    private static Ok<PriceLists> ListPriceLists(OfferStore offers) => TypedResults.Ok(new PriceLists(
        [.. offers.ListSuppliers().Select(list => new PriceListSummary(list.Supplier, list.UpdatedAt, list.Offers))]));

    private static Ok<PriceListRecord> GetPriceList(string supplier, OfferStore offers)
    {
        var (updated, found) = offers.Find(supplier) ?? throw NoPriceList(supplier);
        return TypedResults.Ok(new PriceListRecord(supplier, updated, [.. found.Select(Read)]));
    }

    private static async Task<Results<Created<PriceListRecord>, Ok<PriceListRecord>>> StoreAsync(
        HttpRequest request, PriceListReader reader, OfferStore store, CancellationToken cancellationToken) =>
        Replace(await reader.ReadAsync(null, request, cancellationToken), store);

    private static async Task<Results<Created<PriceListRecord>, Ok<PriceListRecord>>> ReplaceAsync(
        string supplier, HttpRequest request, PriceListReader reader, OfferStore store, CancellationToken cancellationToken) =>
        Replace(await reader.ReadAsync(supplier, request, cancellationToken), store);

    private static Results<Created<PriceListRecord>, Ok<PriceListRecord>> Replace(ReadPriceList list, OfferStore store)
    {
        var (updated, isNew) = store.Replace(list.Supplier, [.. list.Offers.Zip(list.Records, (offer, record) => new StoredOffer(
            offer.Id, offer.Species, offer.Kind, offer.Thickness, JsonSerializer.Serialize(record, WireJson.Default.OfferRecord)))]);
        var answer = new PriceListRecord(list.Supplier, updated, list.Records);
        return isNew ? TypedResults.Created($"/v1/price-lists/{list.Supplier}", answer) : TypedResults.Ok(answer);
    }

    private static NoContent Delete(string supplier, OfferStore offers) =>
        offers.Delete(supplier) ? TypedResults.NoContent() : throw NoPriceList(supplier);

    private static Ok<OfferPage> List(HttpRequest request, OfferStore offers)
    {
        var reader = new QueryReader(request.Query, "supplier", "species", "kind", "minThicknessMm", "maxThicknessMm");
        var filter = new OfferFilter
        {
            Supplier = reader.Text("supplier"),
            Species = reader.Text("species"),
            Kind = reader.Word<BoardKind>("kind"),
            MinThickness = reader.Size("minThicknessMm"),
            MaxThickness = reader.Size("maxThicknessMm"),
        };
        var (after, limit) = reader.Page();
        var (found, next) = offers.List(filter, after ?? 0, limit);
        return TypedResults.Ok(new OfferPage([.. found.Select(Read)], QueryReader.Next(request.HttpContext, next)));
    }

    private static OfferRecord Read(string content) => JsonSerializer.Deserialize(content, WireJson.Default.OfferRecord)!;

    private static OffcutsException NoPriceList(string supplier) =>
        new(ErrorCode.NotFound, $"There is no price list of '{supplier}'. List the price lists to see which there are.");
}
