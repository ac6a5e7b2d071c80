using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;

namespace Offcuts.Host.Http;

/// <summary>Answers that come as server-sent events while they are worked out. Closing the connection ends the work.</summary>
internal sealed partial class EventAnswers(ILogger<EventAnswers> log)
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
    /// <param name="search">Searches on a thread of its own; is given where to tell how far it is, on one thread at a time.</param>
    /// <param name="progress">How far it is as JSON.</param>
    /// <param name="answer">The answer as JSON.</param>
    public async Task<Results<Ok<TAnswer>, ServerSentEventsResult<string>>> SearchAsync<TProgress, TAnswer>(
        HttpContext context, Func<Action<TProgress>, TAnswer> search, JsonTypeInfo<TProgress> progress, JsonTypeInfo<TAnswer> answer)
    {
        if (AreAsked(context.Request))
        {
            return Of(EventsAsync(search, progress, answer, context.RequestAborted), context);
        }

        // The search keeps its thread for as long as the budget, so it takes none from the pool.
        var found = await Task.Factory.StartNew(() => search(_ => { }), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        context.RequestAborted.ThrowIfCancellationRequested();
        return TypedResults.Ok(found);
    }

    private static async IAsyncEnumerable<SseItem<string>> EventsAsync<TProgress, TAnswer>(
        Func<Action<TProgress>, TAnswer> search, JsonTypeInfo<TProgress> progress, JsonTypeInfo<TAnswer> answer, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var events = Channel.CreateUnbounded<SseItem<string>>(new() { SingleReader = true });
        var searching = Task.Factory.StartNew(Search, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await foreach (var told in events.Reader.ReadAllAsync(cancellationToken))
            {
                yield return told;
            }
        }
        finally
        {
            // Whoever stops listening ends the search by the same token; its turn is over only when it has ended.
            await searching;
        }

        void Search()
        {
            try
            {
                events.Writer.TryWrite(Item("end", search(far => events.Writer.TryWrite(Item("progress", far, progress))), answer));
                events.Writer.Complete();
            }
            catch (Exception fault)
            {
                // It is thrown to whoever reads the channel.
                events.Writer.Complete(fault);
            }
        }
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
            catch (Exception fault) when (!cancellationToken.IsCancellationRequested)
            {
                LogFailure(log, fault, traceId);
                problem = Problems.Of(fault, traceId);
            }

            if (problem is not null)
            {
                yield return Item("fault", problem, WireJson.Default.Problem);
                yield break;
            }

            yield return events.Current;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {TraceId} failed")]
    private static partial void LogFailure(ILogger logger, Exception failure, string traceId);
}
