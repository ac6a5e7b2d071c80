using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace Offcuts.Host.Http;

/// <summary>Work that takes seconds, on a thread of its own, which tells what there is to tell as it comes.</summary>
internal static class ToldWork
{
    /// <summary>Does the work, and gives what it tells. What it throws is thrown to whoever reads; whoever stops reading ends it.</summary>
    /// <param name="work">Is given where to tell, on one thread at a time, and what ends it.</param>
    /// <param name="cancellationToken">Ends it.</param>
    public static async IAsyncEnumerable<T> RunAsync<T>(Action<Action<T>, CancellationToken> work, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        using var left = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var events = Channel.CreateUnbounded<T>(new() { SingleReader = true });
        var working = Task.Factory.StartNew(Work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await foreach (var told in events.Reader.ReadAllAsync(cancellationToken))
            {
                yield return told;
            }
        }
        finally
        {
            // The turn of the request is over only when the processors are free for the next.
            await left.CancelAsync();
            await working;
        }

        void Work()
        {
            try
            {
                work(told => events.Writer.TryWrite(told), left.Token);
                events.Writer.Complete();
            }
            catch (Exception fault)
            {
                // It is thrown to whoever reads the channel.
                events.Writer.Complete(fault);
            }
        }
    }
}
