using Offcuts.Host.Plans;

namespace Offcuts.Host.Tests;

public class QueuedRunTests
{
    [Fact]
    public void Whoever_cancels_a_run_as_it_ends_is_not_too_late()
    {
        var run = new QueuedRun("one");
        var cancelled = run.Cancelled;
        run.End();
        run.Dispose();
        run.Cancel();
        Assert.False(cancelled.IsCancellationRequested);

        using var other = new QueuedRun("other");
        other.Cancel();
        Assert.True(other.Cancelled.IsCancellationRequested);
    }
}
