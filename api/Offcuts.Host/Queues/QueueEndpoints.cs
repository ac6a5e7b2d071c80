using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Queues;

/// <summary><c>/v1/queue</c>.</summary>
internal static class QueueEndpoints
{
    public static void MapQueue(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/queue", ["GET", "HEAD"], List);
        app.MapPost("/v1/queue", AddAsync);
        app.MapPost("/v1/queue/{id}/moves", MoveAsync);
        app.MapDelete("/v1/queue/{id}", Remove);
    }

    private static Ok<QueueRecord> List(QueueStore queue, DesignStore designs) => TypedResults.Ok(ToRecord(queue, designs));

    private static async Task<Created<QueueRecord>> AddAsync(HttpRequest request, QueueStore queue, DesignStore designs, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.QueueEntry, cancellationToken);
        var faults = new Faults();
        if (entry.Position is { } position)
        {
            faults.Count("#/position", position, 1, JointDesign.MaxBuilds);
        }

        faults.ThrowIfAny();
        var design = designs.Find(entry.Design) ?? throw DesignEndpoints.NoDesign(entry.Design);
        queue.Add(design.Reference, entry.Position);
        return TypedResults.Created("/v1/queue", ToRecord(queue, designs));
    }

    private static async Task<Ok<QueueRecord>> MoveAsync(string id, HttpRequest request, QueueStore queue, DesignStore designs, CancellationToken cancellationToken)
    {
        var move = await RequestBody.ReadAsync(request, WireJson.Default.QueueMove, cancellationToken);
        var faults = new Faults();
        faults.Count("#/position", move.Position, 1, JointDesign.MaxBuilds);
        faults.ThrowIfAny();
        return queue.Move(Read(id), move.Position) ? TypedResults.Ok(ToRecord(queue, designs)) : throw NoEntry(id);
    }

    private static NoContent Remove(string id, QueueStore queue) => queue.Remove(Read(id)) ? TypedResults.NoContent() : throw NoEntry(id);

    private static QueueRecord ToRecord(QueueStore queue, DesignStore designs) => new([.. queue.List().Select(build => new QueueItem(
        build.Id, build.Position, build.Design,
        designs.Find(build.Design) is { } design ? JsonSerializer.Deserialize(design.Content, WireJson.Default.DesignEntry)!.Name : null,
        build.AddedAt, build.PlanId))]);

    private static long Read(string id) => long.TryParse(id, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : throw NoEntry(id);

    private static OffcutsException NoEntry(string id) => new(ErrorCode.NotFound, $"There is no build '{id}' in the queue: list the queue to see which there are.");
}
