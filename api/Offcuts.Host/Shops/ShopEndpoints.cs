using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary><c>/v1/shop</c>.</summary>
internal static class ShopEndpoints
{
    public static void MapShop(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/shop", ["GET", "HEAD"], Get);
        app.MapPut("/v1/shop", ReplaceAsync);
    }

    private static Ok<ShopRecord> Get(Workshop workshop) => TypedResults.Ok(ShopMapping.ToRecord(workshop.Shop()));

    private static async Task<Ok<ShopRecord>> ReplaceAsync(HttpRequest request, ShopStore store, CurrencyChange currency, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.ShopEntry, cancellationToken);
        var faults = new Faults();
        var shop = ShopMapping.ToShop(entry, "#", faults);
        faults.ThrowIfAny();
        currency.Check(shop.Currency);
        store.ReplaceShop(JsonSerializer.Serialize(ShopMapping.ToEntry(shop), WireJson.Default.ShopEntry));
        return TypedResults.Ok(ShopMapping.ToRecord(shop));
    }
}
