using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Documents;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Designs;

/// <summary><c>/v1/designs</c>.</summary>
internal static class DesignEndpoints
{
    public static void MapDesigns(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/designs", ["GET", "HEAD"], List);
        app.MapPost("/v1/designs", StoreAsync);
        app.MapMethods("/v1/designs/{reference}", ["GET", "HEAD"], Get);
        app.MapMethods("/v1/designs/{reference}/versions", ["GET", "HEAD"], ListVersions);
        app.MapDelete("/v1/designs/{reference}", Delete);
    }

    private static Ok<DesignPage> List(HttpRequest request, DesignStore designs)
    {
        var (after, limit) = new QueryReader(request.Query).Page();
        var (found, next) = designs.List(after ?? 0, limit);
        return TypedResults.Ok(new DesignPage([.. found.Select(ToSummary)], QueryReader.Next(request.HttpContext, next)));
    }

    private static async Task<Results<Created<DesignRecord>, Ok<DesignRecord>>> StoreAsync(
        HttpRequest request, Workshop workshop, DesignStore designs, CancellationToken cancellationToken)
    {
        var (shop, catalogue) = workshop.Now();
        var design = await ReadAsync(request, shop, catalogue, cancellationToken);
        var reference = Slug.Of(design.Name);
        if (reference.Length == 0)
        {
            throw new OffcutsException(
                ErrorCode.Invalid, "The design cannot be referred to.", new InputFault("#/name", $"'{design.Name}' has neither letters nor digits: give a name that has."));
        }

        var (content, version) = DesignMapping.Canonical(design, shop.Currency);
        var (stored, isNew) = designs.Store(reference, version, content);
        return isNew ? TypedResults.Created($"/v1/designs/{version}", ToRecord(stored)) : TypedResults.Ok(ToRecord(stored));
    }

    private static Ok<DesignRecord> Get(string reference, DesignStore designs) =>
        TypedResults.Ok(ToRecord(designs.Find(reference) ?? throw NoDesign(reference)));

    private static Ok<DesignPage> ListVersions(string reference, DesignStore designs)
    {
        var found = designs.ListVersions(reference);
        return found.Count > 0 ? TypedResults.Ok(new DesignPage([.. found.Select(ToSummary)], null)) : throw NoDesign(reference);
    }

    private static NoContent Delete(string reference, DesignStore designs) =>
        designs.Delete(reference) ? TypedResults.NoContent() : throw NoDesign(reference);

    private static async Task<Design> ReadAsync(
        HttpRequest request, Shop shop, SpeciesCatalogue catalogue, CancellationToken cancellationToken)
    {
        if (RequestBody.IsDocument(request))
        {
            return DesignDocument.Parse(await RequestBody.ReadTextAsync(request, cancellationToken), shop.Unit, catalogue, shop.Currency);
        }

        var entry = await RequestBody.ReadAsync(request, WireJson.Default.DesignEntry, cancellationToken);
        var faults = new Faults();
        var design = DesignMapping.ToDesign(entry, catalogue, shop.Currency, "#", faults);
        faults.ThrowIfAny();
        return design;
    }

    private static DesignRecord ToRecord(StoredDesign stored) =>
        new(stored.Reference, stored.Version, stored.Current, stored.CreatedAt, Content(stored));

    private static DesignSummary ToSummary(StoredDesign stored)
    {
        var design = Content(stored);
        return new(
            stored.Reference, design.Name, stored.Version, stored.Current, stored.CreatedAt,
            design.Parts?.Sum(part => part.Quantity) ?? 0, design.Panels?.Sum(panel => panel.Quantity) ?? 0, design.Items?.Count ?? 0, design.Tags, design.Hours);
    }

    private static DesignEntry Content(StoredDesign stored) => JsonSerializer.Deserialize(stored.Content, WireJson.Default.DesignEntry)!;

    internal static OffcutsException NoDesign(string reference) =>
        new(ErrorCode.NotFound, $"There is no design '{reference}'. List the designs to see which there are.");
}
