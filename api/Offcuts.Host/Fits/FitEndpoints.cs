using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Host.Http;
using Offcuts.Planning.Fitting;

namespace Offcuts.Host.Fits;

/// <summary><c>/v1/fits</c>: which saved design fits today's stock.</summary>
internal static partial class FitEndpoints
{
    private const string EventStream = "text/event-stream";

    public static void MapFits(this IEndpointRouteBuilder app) => app.MapMethods("/v1/fits", ["GET", "HEAD"], RankAsync).IsHeavy(HeavyKind.Search);

    private static async Task<Results<Ok<FitList>, ServerSentEventsResult<string>>> RankAsync(
        HttpContext context, FitRunner runner, ILoggerFactory logs, CancellationToken cancellationToken)
    {
        var run = runner.Prepare(context.Request.Query);
        return context.Request.Headers.GetCommaSeparatedValues("Accept").Any(type => type.StartsWith(EventStream, StringComparison.OrdinalIgnoreCase))
            ? TypedResults.ServerSentEvents(EventsAsync(run, context.TraceIdentifier, logs.CreateLogger(typeof(FitEndpoints)), cancellationToken))
            : TypedResults.Ok(await WholeAsync(run, cancellationToken));
    }

    private static async Task<FitList> WholeAsync(FitRun run, CancellationToken cancellationToken)
    {
        var (items, end) = (new List<FitRecord>(), (FitEnd?)null);
        await foreach (var told in run.RunAsync(cancellationToken))
        {
            switch (told)
            {
                case FitPlace place:
                    items.Add(run.Mapping.ToRecord(place));
                    break;
                case FitSummary summary:
                    end = run.Mapping.ToRecord(summary);
                    break;
            }
        }

        return new FitList(end!.Order, end.Currency, items, end);
    }

    private static async IAsyncEnumerable<SseItem<string>> EventsAsync(
        FitRun run, string traceId, ILogger log, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await using var events = run.RunAsync(cancellationToken).GetAsyncEnumerator(cancellationToken);
        while (true)
        {
            Problem? problem = null;
            try
            {
                if (!await events.MoveNextAsync())
                {
                    yield break;
                }
            }
            catch (Exception fault) when (!cancellationToken.IsCancellationRequested)
            {
                // The answer has begun, so its status can no longer say so.
                LogFailure(log, fault, traceId);
                problem = Problems.Of(fault, traceId);
            }

            if (problem is not null)
            {
                yield return new SseItem<string>(JsonSerializer.Serialize(problem, WireJson.Default.Problem), "fault");
                yield break;
            }

            yield return events.Current switch
            {
                FitProgress progress => new SseItem<string>(JsonSerializer.Serialize(FitMapping.ToRecord(progress), WireJson.Default.FitProgressRecord), "progress"),
                FitPlace place => new SseItem<string>(JsonSerializer.Serialize(run.Mapping.ToRecord(place), WireJson.Default.FitRecord), "place"),
                FitSummary summary => new SseItem<string>(JsonSerializer.Serialize(run.Mapping.ToRecord(summary), WireJson.Default.FitEnd), "end"),
                var other => throw new InvalidOperationException($"There is no event for {other.GetType().Name}."),
            };
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {TraceId} failed")]
    private static partial void LogFailure(ILogger logger, Exception failure, string traceId);
}
