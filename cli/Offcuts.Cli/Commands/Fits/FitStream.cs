using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Fits;

/// <summary>The events of a ranking as they come from the server.</summary>
internal static class FitStream
{
    /// <summary>A <see cref="FitProgressRecord"/>, a <see cref="FitRecord"/> or, last, a <see cref="FitEnd"/>. Whoever stops reading ends the ranking.</summary>
    /// <exception cref="ProblemException">The ranking failed on the way.</exception>
    public static async IAsyncEnumerable<object> ReadAsync(IOffcutsApi api, FitQuery query, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        await using var stream = await api.StreamFitsAsync(query, cancellationToken);
        await foreach (var told in SseParser.Create(stream).EnumerateAsync(cancellationToken))
        {
            switch (told.EventType)
            {
                case "progress":
                    yield return JsonSerializer.Deserialize(told.Data, ClientJson.Default.FitProgressRecord)!;
                    break;
                case "place":
                    yield return JsonSerializer.Deserialize(told.Data, ClientJson.Default.FitRecord)!;
                    break;
                case "end":
                    yield return JsonSerializer.Deserialize(told.Data, ClientJson.Default.FitEnd)!;
                    break;
                case "fault":
                    throw SearchStream.Fault(told.Data);
                    // Others may come from a newer server.
            }
        }
    }
}
