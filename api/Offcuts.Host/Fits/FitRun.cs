using System.Runtime.CompilerServices;
using System.Threading.Channels;
using Offcuts.Domain;
using Offcuts.Planning.Fitting;

namespace Offcuts.Host.Fits;

/// <summary>One ranking: all that it is made from, as it was at one moment.</summary>
/// <param name="Search">Ranks.</param>
/// <param name="Memory">What is known from before.</param>
/// <param name="Mapping">Tells it on the wire.</param>
/// <param name="Designs">The designs of the store.</param>
/// <param name="Unreadable">References of designs that cannot be read any more.</param>
/// <param name="Budget">Time to rank.</param>
internal sealed record FitRun(
    FitSearch Search, FitMemory Memory, FitMapping Mapping, IReadOnlyList<SavedDesign> Designs, IReadOnlyList<string> Unreadable, TimeSpan Budget)
{
    /// <summary>Ranks, and tells what there is to tell as it comes; the summary comes last. The first that goes wrong is thrown where it is waited for.</summary>
    public async IAsyncEnumerable<FitEvent> RunAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        using var left = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        using var timeUp = new CancellationTokenSource(Budget);
        var events = Channel.CreateUnbounded<FitEvent>(new() { SingleReader = true });
        var ranking = Task.Factory.StartNew(
            () => Rank(events.Writer, timeUp.Token, left.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await foreach (var told in events.Reader.ReadAllAsync(cancellationToken))
            {
                yield return told;
            }
        }
        finally
        {
            // Whoever stops listening ends it, and the processors are free for the next.
            await left.CancelAsync();
            await ranking.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private void Rank(ChannelWriter<FitEvent> events, CancellationToken timeUp, CancellationToken left)
    {
        try
        {
            FitSummary summary;
            try
            {
                summary = Search.Run(Designs, told => events.TryWrite(told), timeUp, left);
            }
            finally
            {
                Memory.Flush();
            }

            events.TryWrite(summary with { Failed = [.. Unreadable, .. summary.Failed] });
            events.Complete();
        }
        catch (Exception fault)
        {
            // It is thrown to whoever reads the channel.
            events.Complete(fault);
        }
    }
}
