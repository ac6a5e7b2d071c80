using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.StockTakes;

/// <summary><c>/v1/stock-takes</c>.</summary>
internal static class StockTakeEndpoints
{
    private enum State
    {
        Open,
        Finished,
    }

    private enum Unseen
    {
        Leave,
        Strike,
    }

    public static void MapStockTakes(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/stock-takes", ["GET", "HEAD"], List);
        app.MapPost("/v1/stock-takes", StartAsync);
        app.MapMethods("/v1/stock-takes/{number}", ["GET", "HEAD"], Get);
        app.MapPost("/v1/stock-takes/{number}/steps", StepAsync);
        app.MapPost("/v1/stock-takes/{number}/finish", FinishAsync);
    }

    private static Ok<StockTakePage> List(HttpRequest request, StockTakeStore store)
    {
        var reader = new QueryReader(request.Query, "state");
        var state = reader.Word<State>("state");
        var (before, limit) = reader.Page();
        var (takes, next) = store.List(state is { } asked ? asked == State.Open : null, before, limit);
        return TypedResults.Ok(new StockTakePage(
            [.. takes.Select(take => new StockTakeSummary(take.Number, take.Place, take.StartedAt, take.FinishedAt))],
            QueryReader.Next(request.HttpContext, next)));
    }

    private static async Task<Results<Created<StockTakeRecord>, Ok<StockTakeRecord>>> StartAsync(
        HttpRequest request, StockTakeStore store, PlaceStore places, Workshop workshop, Expiry expiry, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.StockTakeStart, cancellationToken);
        var faults = new Faults();
        faults.Text("#/place", entry.Place, Limits.MaxLine, required: true);
        faults.ThrowIfAny();
        if (!entry.NewPlace && places.Names() is var names && !names.Contains(entry.Place))
        {
            throw new OffcutsException(
                ErrorCode.NotFound, $"The book knows no place '{entry.Place}'. {Spelling.Instead(entry.Place, names, "It knows no place yet.")} Say so if it is a new one.");
        }

        expiry.Run();
        var (take, isNew) = store.Start(entry.Place);
        var record = StockTakeMapping.ToRecord(store.Find(take.Number)!, workshop.Catalogue());
        return isNew ? TypedResults.Created(string.Create(CultureInfo.InvariantCulture, $"/v1/stock-takes/{take.Number}"), record) : TypedResults.Ok(record);
    }

    private static Ok<StockTakeRecord> Get(string number, StockTakeStore store, Workshop workshop, Expiry expiry)
    {
        expiry.Run();
        return TypedResults.Ok(StockTakeMapping.ToRecord(Find(number, store), workshop.Catalogue()));
    }

    private static async Task<Ok<StockTakeStepRecord>> StepAsync(
        string number, HttpRequest request, StockTakeStore store, SpokenLines lines, Workshop workshop, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.StockTakeStepEntry, cancellationToken);
        var take = store.FindTake(Read(number)) ?? throw NoTake(number);
        var step = new StockTakeSteps(store, lines, workshop).Take(take, entry);
        return TypedResults.Ok(step with { Unseen = store.Find(take.Number)!.Unseen.Count });
    }

    private static async Task<Ok<StockTakeRecord>> FinishAsync(
        string number, HttpRequest request, StockTakeStore store, Workshop workshop, Expiry expiry, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.StockTakeFinish, cancellationToken);
        var faults = new Faults();
        Unseen? unseen = entry.Unseen is { } word ? faults.Word<Unseen>("#/unseen", word) : null;
        faults.ThrowIfAny();
        expiry.Run();
        var finished = store.Finish(Read(number), unseen is { } said ? said == Unseen.Strike : null);
        return TypedResults.Ok(StockTakeMapping.ToRecord(finished, workshop.Catalogue()));
    }

    private static StockTakeState Find(string number, StockTakeStore store) => store.Find(Read(number)) ?? throw NoTake(number);

    private static long Read(string number) =>
        long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var known) ? known : throw NoTake(number);

    private static OffcutsException NoTake(string number) => new(ErrorCode.NotFound, $"There is no stock-take '{number}'. List them to see which there are.");
}
