using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// Settles what a node of the tree on purchases still leaves open where whole boards are bought. With prices v that give the bound L, any plan costs
/// at least L + sum of what each of its patterns lacks to the best of its board. A plan cheaper than the one known can therefore use only patterns
/// that lack less than known - L. All of them are listed, and the integer program over the list tells whether there is such a plan
/// (the enumeration of columns by reduced cost that is usual in vehicle routing: Baldacci, Christofides and Mingozzi 2008).
/// </summary>
internal sealed class PatternListing(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostEffort = 20_000_000;
    private const int MostPatterns = 5_000;

    /// <summary>Prices below this are raised to it, so that no part is left out of the patterns because it is free.</summary>
    private const double LeastPrice = 1.0 / 64;

    /// <summary>What the node costs at least, at most <paramref name="known"/>, and a cheaper plan if one was found.</summary>
    /// <param name="duals">The duals of the rows at the node.</param>
    /// <param name="node">What may be bought.</param>
    /// <param name="bound">A bound known before.</param>
    /// <param name="known">The cost of a plan at hand.</param>
    /// <param name="limit">The most time for it.</param>
    public (double Bound, Solution? Found) Settle(double[] duals, Purchases node, double bound, long known, TimeSpan limit)
    {
        var need = model.Rows.Select(row => row.Needed).ToArray();
        var prices = PriceList.FromDuals(model.Rows, [.. duals.Select(dual => Math.Max(LeastPrice, dual))], need, 0).Even(model);
        var values = pricer.BestValues(prices);
        var own = SafeBound.At(1, prices, values, node);
        if (own >= known)
        {
            return (known, null);
        }

        var least = values.Select(value => value - (known - 1 - own)).ToArray();
        var boards = model.Boards.Where(board => node.OfSupply(board.Supply).Most > 0 && node.OfBoard(board).Most > 0).ToHashSet();
        var until = clock.Elapsed + limit;
        var effort = new ListingEffort(MostEffort, () => clock.Left <= TimeSpan.Zero || clock.Elapsed > until || clock.Cancellation.IsCancellationRequested);
        var patterns = pricer.Near(prices, boards, least, effort, out var exact);
        if (effort.IsCutShort)
        {
            clock.NoteCutShort();
        }

        return patterns is null || patterns.Count > MostPatterns ? (bound, null) : Solve(patterns, exact, node, bound, known, until - clock.Elapsed);
    }

    private (double Bound, Solution? Found) Solve(List<Pattern> patterns, bool exact, Purchases node, double bound, long known, TimeSpan limit)
    {
        var time = limit < clock.Left ? limit : clock.Left;
        var outcome = new ListedProgram(model, patterns, node, known - 1).Solve(time, out var cutShort);
        if (cutShort)
        {
            clock.NoteCutShort();
        }

        // The solver's tolerances are not trusted: a plan is counted anew in whole numbers.
        var found = outcome.Uses is { } uses ? new Solution(model, patterns.Select((pattern, at) => (pattern, uses[at]))) : null;
        return (outcome.IsDecided ? found?.Money ?? known : bound, exact && found is { IsComplete: true } ? found : null);
    }
}
