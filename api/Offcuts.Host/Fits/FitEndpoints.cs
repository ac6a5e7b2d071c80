using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Host.Http;
using Offcuts.Planning.Fitting;

namespace Offcuts.Host.Fits;

/// <summary><c>/v1/fits</c>: which saved design fits today's stock.</summary>
internal static class FitEndpoints
{
    public static void MapFits(this IEndpointRouteBuilder app) => app.MapMethods("/v1/fits", ["GET", "HEAD"], RankAsync);

    private static async Task<Results<Ok<FitList>, ServerSentEventsResult<string>>> RankAsync(
        HttpContext context, FitRunner runner, EventAnswers answers, HeavyWork work)
    {
        var run = runner.Prepare(context.Request.Query);
        var end = await work.EnterAsync(HeavyKind.Search, context);
        return EventAnswers.AreAsked(context.Request) ? answers.Of(EventsAsync(run, end), context) : TypedResults.Ok(await WholeAsync(run, end));
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

    private static async IAsyncEnumerable<SseItem<string>> EventsAsync(FitRun run, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await foreach (var told in run.RunAsync(cancellationToken))
        {
            yield return told switch
            {
                FitProgress progress => EventAnswers.Item("progress", FitMapping.ToRecord(progress), WireJson.Default.FitProgressRecord),
                FitPlace place => EventAnswers.Item("place", run.Mapping.ToRecord(place), WireJson.Default.FitRecord),
                FitSummary summary => EventAnswers.Item("end", run.Mapping.ToRecord(summary), WireJson.Default.FitEnd),
                var other => throw new InvalidOperationException($"There is no event for {other.GetType().Name}."),
            };
        }
    }
}
