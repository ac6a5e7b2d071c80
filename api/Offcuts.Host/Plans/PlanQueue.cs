using System.Collections.Concurrent;
using System.Threading.Channels;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>A run that this process is to plan.</summary>
internal sealed class QueuedRun(string id) : IDisposable
{
    private readonly CancellationTokenSource cancelled = new();
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Lock gate = new();
    private bool isDisposed;

    public string Id { get; } = id;

    /// <summary>Set when someone asks to end the run early.</summary>
    public CancellationToken Cancelled => cancelled.Token;

    /// <summary>Completes when the run has ended, however.</summary>
    public Task Ended => ended.Task;

    /// <summary>Asks to end the run early. It may have ended in the moment before: then there is nothing to do.</summary>
    public void Cancel()
    {
        lock (gate)
        {
            if (!isDisposed)
            {
                cancelled.Cancel();
            }
        }
    }

    public void End() => ended.TrySetResult();

    public void Dispose()
    {
        lock (gate)
        {
            isDisposed = true;
            cancelled.Dispose();
        }
    }
}

/// <summary>Runs of this process that wait or are planned; only so many at once.</summary>
internal sealed class PlanQueue(PlanStore store, HostSettings settings)
{
    private readonly Channel<QueuedRun> waiting = Channel.CreateUnbounded<QueuedRun>(new() { SingleReader = true });
    private readonly ConcurrentDictionary<string, QueuedRun> underWay = new(StringComparer.Ordinal);
    private readonly Lock gate = new();

    /// <summary>Keeps a new run and queues it.</summary>
    /// <exception cref="RefusedException">As many runs wait as may.</exception>
    public QueuedRun Add(NewPlanRun run)
    {
        lock (gate)
        {
            if (underWay.Count >= settings.PlanQueueLength)
            {
                throw HeavyWork.TooMany($"{underWay.Count} plans are under way, as many as may be");
            }

            store.Add(run);
            var queued = new QueuedRun(run.Id);
            underWay[run.Id] = queued;
            waiting.Writer.TryWrite(queued);
            return queued;
        }
    }

    /// <summary>A run of this process that has not ended; null for any other.</summary>
    public QueuedRun? Find(string id) => underWay.GetValueOrDefault(id);

    /// <summary>The runs in their order, as they come.</summary>
    public IAsyncEnumerable<QueuedRun> TakeAsync(CancellationToken cancellationToken) => waiting.Reader.ReadAllAsync(cancellationToken);

    /// <summary>A run has ended.</summary>
    public void End(QueuedRun run)
    {
        underWay.TryRemove(run.Id, out _);
        run.End();
    }

    /// <summary>The runs that have not ended.</summary>
    public IReadOnlyCollection<QueuedRun> UnderWay => [.. underWay.Values];
}
