using System.Collections.Concurrent;
using Offcuts.Domain;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>Remembers what designs came to, in the database: a client that hosts the service for one command has no other memory.</summary>
internal sealed class FitMemory(FitStore store, FitPrints prints) : IFitMemory
{
    /// <summary>So many outcomes are written at once: each write waits for the disk.</summary>
    private const int Batch = 20;

    private readonly ConcurrentDictionary<DesignReach, string> marks = [];
    private readonly Lock gate = new();
    private readonly List<StoredFit> made = [];
    private readonly List<string> used = [];

    /// <inheritdoc/>
    public FitOutcome? Recall(DesignReach reach, double mayBeNew)
    {
        var mark = MarkOf(reach);
        if (store.Find(mark) is not { } kept)
        {
            return null;
        }

        var outcome = RememberedFit.Read(kept.Outcome);
        if (!RememberedFit.ReadSeen(kept.Seen).StillServes(outcome, prints.Seen(reach), mayBeNew))
        {
            return null;
        }

        lock (gate)
        {
            used.Add(mark);
        }

        return outcome;
    }

    /// <inheritdoc/>
    public void Keep(DesignReach reach, FitOutcome outcome)
    {
        var fit = new StoredFit(MarkOf(reach), RememberedFit.Write(prints.Seen(reach)), RememberedFit.Write(outcome));
        lock (gate)
        {
            made.Add(fit);
            if (made.Count >= Batch)
            {
                Write();
            }
        }
    }

    /// <summary>Writes what is not written yet.</summary>
    public void Flush()
    {
        lock (gate)
        {
            Write();
        }
    }

    private void Write()
    {
        if (made.Count + used.Count > 0)
        {
            store.Keep(made, used);
            made.Clear();
            used.Clear();
        }
    }

    private string MarkOf(DesignReach reach) => marks.GetOrAdd(reach, prints.Mark);
}
