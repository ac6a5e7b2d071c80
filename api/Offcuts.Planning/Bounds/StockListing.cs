using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>What is known of a model whose boards cost nothing.</summary>
/// <param name="IsImpossible">Whether nothing can make all that it asks for.</param>
/// <param name="Found">Cuts that do; null if none were found.</param>
internal readonly record struct Settled(bool IsImpossible, Solution? Found);

/// <summary>
/// Tells whether stock suffices where the linear program says that it might: with how many times over (t) it could make everything, at the prices of that
/// program, no board's pattern may lack more to its best than all boards together give beyond the need. All such patterns are listed
/// (<see cref="PatternListing"/>, with money that there is none of), and the integer program over the list decides.
/// </summary>
internal static class StockListing
{
    /// <summary>What all that is asked for is worth at the prices: much against the grid of prices.</summary>
    private const double Worth = 1000;

    /// <summary>Of more than so many times over the prices would be those of other needs.</summary>
    private const double MostTimes = 1.25;

    /// <summary>Settles it if it can be done in the time.</summary>
    /// <param name="model">The model; none of its boards has a price.</param>
    /// <param name="clock">The time for everything.</param>
    /// <param name="limit">The time for this.</param>
    /// <param name="known">Patterns to start from.</param>
    public static Settled Settle(PlanningModel model, SearchClock clock, TimeSpan limit, IEnumerable<Pattern> known)
    {
        var pricer = new PatternPricer(model);
        var demand = new FreeDemand(model, pricer, [new FreeCount(Worth, 0, MostTimes, 1)], _ => 0);
        var duals = demand.Relax(clock, known);
        if (Array.TrueForAll(duals, dual => dual <= 0))
        {
            return default;
        }

        var (bound, found) = new PatternListing(model, pricer, clock, _ => { }).Settle(new ProgramDuals(duals, []), Purchases.Free(model), 0, 1, limit);
        return new Settled(found is null && bound >= 1, found);
    }
}
