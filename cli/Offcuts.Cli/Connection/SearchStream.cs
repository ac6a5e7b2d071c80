using System.Net.ServerSentEvents;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Offcuts.Cli.Connections;

/// <summary>The events of a search as they come from the server.</summary>
internal static class SearchStream
{
    /// <summary>The answer of a search: its event <c>end</c>. Whoever stops waiting ends the search.</summary>
    /// <param name="opened">The stream.</param>
    /// <param name="progress">How far it is as JSON.</param>
    /// <param name="answer">The answer as JSON.</param>
    /// <param name="show">Told how far it is.</param>
    /// <param name="cancellationToken">Gives it up.</param>
    /// <exception cref="ProblemException">The search failed on the way.</exception>
    /// <exception cref="CliException">The server stopped.</exception>
    public static async Task<TAnswer> AnswerAsync<TProgress, TAnswer>(
        Task<Stream> opened, JsonTypeInfo<TProgress> progress, JsonTypeInfo<TAnswer> answer, Action<TProgress> show, CancellationToken cancellationToken)
    {
        await using var stream = await opened;
        await foreach (var told in SseParser.Create(stream).EnumerateAsync(cancellationToken))
        {
            switch (told.EventType)
            {
                case "progress":
                    show(JsonSerializer.Deserialize(told.Data, progress)!);
                    break;
                case "end":
                    return JsonSerializer.Deserialize(told.Data, answer)!;
                case "fault":
                    throw Fault(told.Data);
                    // Others may come from a newer server.
            }
        }

        throw new CliException("failed", "The server stopped before the answer was known. Try again, or see its log.");
    }

    /// <summary>What the event <c>fault</c> says.</summary>
    public static ProblemException Fault(string data) => new(JsonSerializer.Deserialize(data, ClientJson.Default.Problem)!);
}
