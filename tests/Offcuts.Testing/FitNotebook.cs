using Offcuts.Domain;
using Offcuts.Planning.Fitting;

namespace Offcuts.Testing;

/// <summary>A memory of rankings that lasts as long as the process. Boards are told apart as a planner tells them.</summary>
public sealed class FitNotebook : IFitMemory
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, (SeenStock Seen, FitOutcome Outcome)> known = new(StringComparer.Ordinal);

    public FitOutcome? Recall(DesignReach reach, double mayBeNew)
    {
        lock (gate)
        {
            if (!known.TryGetValue(reach.Design.Reference, out var kept))
            {
                return null;
            }

            return kept.Seen.StillServes(kept.Outcome, Seen(reach), mayBeNew) ? kept.Outcome : null;
        }
    }

    public void Keep(DesignReach reach, FitOutcome outcome)
    {
        lock (gate)
        {
            known[reach.Design.Reference] = (Seen(reach), outcome);
        }
    }

    private static SeenStock Seen(DesignReach reach) => new(
        [.. reach.Boards.Select(board => new TouchableBoard(board.Id, $"{board with { Id = "", Quantity = 1, Place = null, Defects = [] }} {string.Join(';', board.Defects)}", board.Quantity))]);
}
