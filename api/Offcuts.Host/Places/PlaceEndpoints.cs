using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Places;

/// <summary><c>/v1/places</c>.</summary>
internal static class PlaceEndpoints
{
    public static void MapPlaces(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/places", ["GET", "HEAD"], List);
        app.MapMethods("/v1/places/{name}", ["GET", "HEAD"], Get);
        app.MapPut("/v1/places/{name}", ReplaceAsync);
        app.MapDelete("/v1/places/{name}", Delete);
    }

    private static Ok<PlaceList> List(PlaceStore places, Expiry expiry)
    {
        expiry.Run();
        return TypedResults.Ok(new PlaceList([.. places.List().Select(PlaceMapping.ToRecord)]));
    }

    private static Ok<PlaceRecord> Get(string name, PlaceStore places) =>
        TypedResults.Ok(PlaceMapping.ToRecord(places.Find(Written(name)) ?? throw NoPlace(Written(name))));

    private static async Task<Results<Created<PlaceRecord>, Ok<PlaceRecord>>> ReplaceAsync(
        string name, HttpRequest request, PlaceStore places, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.PlaceEntry, cancellationToken);
        var faults = new Faults();
        var place = PlaceMapping.ToPlace(entry, Written(name), faults);
        faults.ThrowIfAny();
        var isNew = places.Replace(place);
        var record = PlaceMapping.ToRecord(places.Find(place.Name)!);
        return isNew ? TypedResults.Created($"/v1/places/{Uri.EscapeDataString(place.Name)}", record) : TypedResults.Ok(record);
    }

    private static NoContent Delete(string name, PlaceStore places) =>
        places.Delete(Written(name)) ? TypedResults.NoContent() : throw NoPlace(Written(name));

    // An escaped slash stays escaped in a path, so that it parts no segments.
    private static string Written(string name) => name.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);

    private static OffcutsException NoPlace(string name) =>
        new(ErrorCode.NotFound, $"Nothing is said of a place '{name}', and no board lies there. List the places to see how they are written.");
}
