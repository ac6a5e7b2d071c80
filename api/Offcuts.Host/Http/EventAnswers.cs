using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;

namespace Offcuts.Host.Http;

/// <summary>Answers that come as server-sent events while they are worked out. Closing the connection ends the work.</summary>
internal sealed class EventAnswers(ILogger<EventAnswers> log, ServiceEnd service)
{
    private const string EventStream = "text/event-stream";

    /// <summary>Whether the client asks for events.</summary>
    public static bool AreAsked(HttpRequest request) =>
        request.Headers.GetCommaSeparatedValues("Accept").Any(type => type.StartsWith(EventStream, StringComparison.OrdinalIgnoreCase));

    /// <summary>An event.</summary>
    public static SseItem<string> Item<T>(string type, T data, JsonTypeInfo<T> json) => new(JsonSerializer.Serialize(data, json), type);

    /// <summary>The events; a fault on the way is the last of them, since the answer has begun and its status can no longer say so.</summary>
    public ServerSentEventsResult<string> Of(IAsyncEnumerable<SseItem<string>> events, HttpContext context) =>
        TypedResults.ServerSentEvents(GuardedAsync(events, context.TraceIdentifier, context.RequestAborted));

    /// <summary>The answer of a search: at once when it is found or, if the client asks for events, as <c>progress</c> and <c>end</c>.</summary>
    /// <param name="context">The request.</param>
    /// <param name="search">Searches on a thread of its own; is given where to tell how far it is, on one thread at a time, and what ends it.</param>
    /// <param name="progress">How far it is as JSON.</param>
    /// <param name="answer">The answer as JSON.</param>
    /// <param name="cancellationToken">Ends it (<see cref="HeavyWork.EnterAsync"/>).</param>
    public async Task<Results<Ok<TAnswer>, ServerSentEventsResult<string>>> SearchAsync<TProgress, TAnswer>(
        HttpContext context, Func<Action<TProgress>, CancellationToken, TAnswer> search, JsonTypeInfo<TProgress> progress, JsonTypeInfo<TAnswer> answer,
        CancellationToken cancellationToken)
    {
        if (AreAsked(context.Request))
        {
            return Of(
                ToldWork.RunAsync<SseItem<string>>((tell, left) => tell(Item("end", search(far => tell(Item("progress", far, progress)), left), answer)), cancellationToken),
                context);
        }

        // The search keeps its thread for as long as the budget, so it takes none from the pool.
        var found = await Task.Factory.StartNew(() => search(_ => { }, cancellationToken), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        cancellationToken.ThrowIfCancellationRequested();
        return TypedResults.Ok(found);
    }

    private async IAsyncEnumerable<SseItem<string>> GuardedAsync(
        IAsyncEnumerable<SseItem<string>> told, string traceId, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await using var events = told.GetAsyncEnumerator(cancellationToken);
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
            catch (OperationCanceledException) when (service.Stopping.IsCancellationRequested)
            {
                // A stream without its last event says so.
                yield break;
            }
            catch (Exception fault) when (!cancellationToken.IsCancellationRequested)
            {
                problem = Problems.Of(fault, traceId, log);
            }

            if (problem is not null)
            {
                yield return Item("fault", problem, WireJson.Default.Problem);
                yield break;
            }

            yield return events.Current;
        }
    }
}
