using System.Diagnostics;

namespace Offcuts.Planning.Search;

/// <summary>How much of the budget is left. May be used by several threads.</summary>
internal sealed class SearchClock(TimeSpan budget, CancellationToken cancellationToken)
{
    private readonly Stopwatch watch = Stopwatch.StartNew();

    public TimeSpan Elapsed => watch.Elapsed;

    public TimeSpan Left => budget - watch.Elapsed;

    public CancellationToken Cancellation => cancellationToken;

    /// <summary>Whether the search must stop; noted, because then the same seed need not give the same plan.</summary>
    public bool IsOver
    {
        get
        {
            var isOver = cancellationToken.IsCancellationRequested || Left <= TimeSpan.Zero;
            Note(isOver);
            return isOver;
        }
    }

    /// <summary>Whether it is time for the last touches; noted likewise.</summary>
    public bool IsNearlyOver
    {
        get
        {
            var isNearlyOver = IsOver || Left <= budget / 20;
            Note(isNearlyOver);
            return isNearlyOver;
        }
    }

    /// <summary>Whether the clock or a cancellation ended anything.</summary>
    public bool CutShort { get; private set; }

    /// <summary>Notes that a step was ended by its own time limit; the search goes on.</summary>
    public void NoteCutShort() => CutShort = true;

    // Only ever set: to write back what was read would take back what another thread noted in between.
    private void Note(bool isCutShort)
    {
        if (isCutShort)
        {
            NoteCutShort();
        }
    }
}
