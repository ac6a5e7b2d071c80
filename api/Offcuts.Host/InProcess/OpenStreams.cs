using System.Collections.Concurrent;

namespace Offcuts.Host.InProcess;

/// <summary>The answers that are read while they are written: the service must not end before they have.</summary>
internal sealed class OpenStreams : IAsyncDisposable
{
    private readonly ConcurrentBag<Task> open = [];
    private readonly CancellationTokenSource stopping = new();

    /// <summary>Set when the service ends.</summary>
    public CancellationToken Stopping => stopping.Token;

    /// <summary>Adds one.</summary>
    public void Add(Task answering) => open.Add(answering);

    /// <summary>Ends them and waits until they have. Whoever read one was told of its failure.</summary>
    public async ValueTask DisposeAsync()
    {
        await stopping.CancelAsync();
        await Task.WhenAll(open).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        stopping.Dispose();
    }
}
