using Offcuts.Domain;
using Offcuts.Host.Http;
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
    public IAsyncEnumerable<FitEvent> RunAsync(CancellationToken cancellationToken) => ToldWork.RunAsync<FitEvent>(Rank, cancellationToken);

    private void Rank(Action<FitEvent> tell, CancellationToken left)
    {
        using var timeUp = new CancellationTokenSource(Budget);
        FitSummary summary;
        try
        {
            summary = Search.Run(Designs, tell, timeUp.Token, left);
        }
        finally
        {
            Memory.Flush();
        }

        tell(summary with { Failed = [.. Unreadable, .. summary.Failed] });
    }
}
