using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// Asks whether there is a plan for the least total that is possible, before any is known that costs little more. Where few totals are possible the
/// linear program may be so near to one of them that few patterns can matter: all of them are listed.
/// </summary>
internal sealed class LeastTotal(PlanningModel model, PurchaseProgram program, PatternListing listing, SearchClock clock)
{
    /// <summary>Whether totals lie so far apart that it is worth asking: by half of the cheapest board after the least.</summary>
    /// <param name="target">The least total.</param>
    /// <param name="known">The cost of a plan at hand.</param>
    public bool IsWorthwhile(long target, long known)
    {
        var prices = model.Boards.Where(board => board.Price > 0).Select(board => board.Price).ToList();
        return AttainableTotals.RoundUp(target + 1, known, prices) - target >= prices.Min() / 2;
    }

    /// <summary>The bound afterwards, and a plan for as little as the target if one was found.</summary>
    /// <param name="pool">Patterns to start from.</param>
    /// <param name="root">A bound known before, at most the target.</param>
    /// <param name="target">The money that is asked for.</param>
    /// <param name="limit">The most time for the listing.</param>
    public (double Bound, Solution? Found) Seek(IEnumerable<Pattern> pool, double root, long target, TimeSpan limit)
    {
        using var master = program.Open(pool);
        var free = Purchases.Free(model);
        free.Apply(master);
        var bound = Math.Max(root, program.Bound(master, free, target + 1));
        return bound > target || clock.IsOver ? (bound, null) : listing.Settle(program.Central(master), free, bound, target + 1, limit);
    }
}
