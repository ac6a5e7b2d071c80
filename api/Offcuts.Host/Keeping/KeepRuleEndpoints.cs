using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Documents;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Keeping;

/// <summary><c>/v1/keep-rule</c>.</summary>
internal static class KeepRuleEndpoints
{
    public static void MapKeepRule(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/keep-rule", ["GET", "HEAD"], Get);
        app.MapPut("/v1/keep-rule", ReplaceAsync);
        app.MapMethods("/v1/keep-rule/answer", ["GET", "HEAD"], Answer);
    }

    private static Ok<KeepRuleRecord> Get(Workshop workshop)
    {
        var (shop, catalogue) = workshop.Now();
        return TypedResults.Ok(KeepRuleMapping.ToRecord(workshop.WrittenKeepRule(catalogue), shop, catalogue));
    }

    private static async Task<Ok<KeepRuleRecord>> ReplaceAsync(HttpRequest request, ShopStore store, Workshop workshop, CancellationToken cancellationToken)
    {
        var (shop, catalogue) = workshop.Now();
        var rule = RequestBody.IsDocument(request)
            ? KeepRuleDocument.Parse(await RequestBody.ReadTextAsync(request, cancellationToken), shop.Unit, catalogue)
            : Checked(await RequestBody.ReadAsync(request, WireJson.Default.KeepRuleEntry, cancellationToken), catalogue);
        store.ReplaceKeepRule(JsonSerializer.Serialize(KeepRuleMapping.ToEntry(rule), WireJson.Default.KeepRuleEntry));
        return TypedResults.Ok(KeepRuleMapping.ToRecord(rule, shop, catalogue));
    }

    private static Ok<KeepAnswer> Answer(HttpRequest request, SpokenLines lines, Workshop workshop)
    {
        var (shop, catalogue) = workshop.Now();
        var (piece, understood) = Read(request.Query, lines, shop, catalogue);
        var clear = ClearPart.Of(piece.Size, piece.Defects, shop.KeptOf(piece.Species));
        var ruling = KeepRuling.Of(shop.KeepRule, shop.Keep, piece.Species, clear).AsWritten(workshop.WrittenKeepRule(catalogue));
        return TypedResults.Ok(new KeepAnswer(
            ruling.IsKept, understood, ruling.Number, KeepRuleMapping.TextOf(shop, catalogue).Of(ruling, clear, piece.Size)));
    }

    private static (NewBoard Piece, string Understood) Read(IQueryCollection query, SpokenLines lines, Shop shop, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        QueryReader.CheckNames(query, ["piece"], faults);
        faults.ThrowIfAny();
        var reading = lines.ReadOne(query["piece"].ToString(), new QuickCarry(), shop, catalogue, "?piece", "The piece is not understood: see errors.");
        if (reading.Board is null)
        {
            faults.Add("?piece", "It names no piece: give thickness x width x length and species, for instance 3/4 x 2 x 14 walnut.");
        }

        faults.ThrowIfAny();
        return (reading.Board!, reading.Understood!);
    }

    private static KeepRule Checked(KeepRuleEntry entry, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        var rule = KeepRuleMapping.ToRule(entry, catalogue, "#", faults);
        faults.ThrowIfAny();
        return rule;
    }
}
