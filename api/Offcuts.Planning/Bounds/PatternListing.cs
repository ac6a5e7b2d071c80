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
/// <param name="model">The model.</param>
/// <param name="pricer">Prices and lists patterns.</param>
/// <param name="clock">How much of the time is left.</param>
/// <param name="listed">Told of the patterns where the program over them could not be solved.</param>
/// <param name="mostEffort">Steps after which a listing is given up.</param>
internal sealed class PatternListing(
    PlanningModel model, PatternPricer pricer, SearchClock clock, Action<Pattern> listed, long mostEffort = PatternListing.MostEffort)
{
    private const long MostEffort = 8_000_000;
    private const int MostPatterns = 15_000;
    private const int ManyPatterns = 1_500;

    /// <summary>More patterns than this would slow the dives down.</summary>
    private const int MostKept = 5_000;
    private const int ShareOfMany = 8;

    /// <summary>Prices below this part of the cheapest board's are raised to it, so that no part is left out of the patterns because it is free.</summary>
    private const double LeastShare = 1.0 / 4_194_304;
    private readonly ProperValues proper = new(model, pricer, () => clock.IsOver);
    private readonly double leastPrice =
        LeastShare * model.Boards.Where(board => board.Price > 0).Select(board => board.Price).DefaultIfEmpty(1).Min();

    /// <summary>What the node costs at least, at most <paramref name="known"/>, and a cheaper plan if one was found.</summary>
    /// <param name="duals">The prices at the node.</param>
    /// <param name="node">What may be bought.</param>
    /// <param name="bound">A bound known before.</param>
    /// <param name="known">The cost of a plan at hand.</param>
    /// <param name="limit">The most time for it.</param>
    public (double Bound, Solution? Found) Settle(ProgramDuals duals, Purchases node, double bound, long known, TimeSpan limit)
    {
        var until = clock.Elapsed + limit;
        var (settled, found) = Settle(duals, leastPrice, node, bound, known, until);
        if (settled >= known || found is not null || !model.Rows.Any(row => row.Needed > 0 && duals.Rows[row.Index] <= leastPrice))
        {
            return (settled, found);
        }

        if (clock.IsOver || clock.Elapsed >= until)
        {
            clock.NoteCutShort();
            return (settled, found);
        }

        return Settle(duals, 0, node, bound, known, until);
    }

    /// <summary>
    /// One try. What costs nothing makes the patterns many: for that, rows at no price are left out of the patterns and of the program, which then is a
    /// relaxation, and a plan found is filled up with them.
    /// </summary>
    private (double Bound, Solution? Found) Settle(ProgramDuals duals, double raised, Purchases node, double bound, long known, TimeSpan until)
    {
        var need = model.Rows.Select(row => row.Needed).ToArray();
        var prices = PriceList.FromDuals(model.Rows, [.. duals.Rows.Select(dual => dual <= leastPrice ? raised : dual)], need, 0).Even(model);
        var costs = duals.Costs(model);
        var values = proper.Of(prices, costs);
        if (SafeBound.BestFraction(model, prices, values, node) is var fraction and < 1)
        {
            prices = prices.Times(fraction);
            values = proper.Of(prices, [.. costs.Select(cost => cost * fraction)]);
        }

        var own = SafeBound.At(1, prices, values, node);
        if (own >= known)
        {
            return (known, null);
        }

        var least = values.Select(value => value - (known - 1 - own)).ToArray();
        var boards = model.Boards.Where(board => node.OfSupply(board.Supply).Most > 0 && node.OfBoard(board).Most > 0).ToHashSet();
        var effort = new ListingEffort(mostEffort, () => clock.Left <= TimeSpan.Zero || clock.Elapsed > until || clock.Cancellation.IsCancellationRequested);
        var patterns = pricer.Near(prices, boards, least, effort, out var exact);
        if (effort.IsCutShort)
        {
            clock.NoteCutShort();
        }

        var free = model.Rows.Where(row => row.Needed > 0 && prices.Piece[row.Index] + prices.PerTick[row.Index] <= 0).Select(row => row.Index).ToHashSet();
        if (patterns is not null && free.Count > 0)
        {
            // A board may be bought for what is free alone.
            patterns.AddRange(boards.Where(board => board.Price > 0).OrderBy(board => board.Index).Select(board => PatternFactory.Create(model, board, ripFirst: false, [])));
        }

        return patterns is null || patterns.Count > MostPatterns
            ? (bound, null)
            : Solve(patterns, free, Surplus(prices, known - 1 - own), exact, node, bound, known, until - clock.Elapsed);
    }

    /// <summary>
    /// How many pieces too many such a plan can make of each row at most: they add their price to what it costs above the bound as well. Where that is
    /// none, the program must cover exactly, which makes it much easier to solve.
    /// </summary>
    private long[] Surplus(PriceList prices, double gap) => [.. model.Rows.Select(row =>
        prices.Piece[row.Index] > 0 ? (long)Math.Min(int.MaxValue, Math.Max(0, gap) / prices.Piece[row.Index]) : int.MaxValue)];

    private (double Bound, Solution? Found) Solve(
        List<Pattern> patterns, HashSet<int> free, long[] surplus, bool exact, Purchases node, double bound, long known, TimeSpan limit)
    {
        // With many patterns diving over them finds a plan sooner than the program does.
        var most = patterns.Count > ManyPatterns ? clock.Left / ShareOfMany : clock.Left;
        var time = limit < most ? limit : most;
        var outcome = new ListedProgram(model, patterns, free, surplus, node, known - 1).Solve(time, out var cutShort);
        if (cutShort)
        {
            clock.NoteCutShort();
        }

        // What is left open is at least good to know for the dives.
        foreach (var pattern in exact && !outcome.IsDecided && patterns.Count <= MostKept ? patterns.Where(pattern => pattern.Cover.Length > 0) : [])
        {
            listed(pattern);
        }

        if (outcome.Uses is not { } uses)
        {
            return (outcome.IsDecided ? known : bound, null);
        }

        // The solver's tolerances are not trusted: a plan is counted anew in whole numbers.
        var cuts = patterns.Select((pattern, at) => (pattern, uses[at])).ToList();
        var least = new Solution(model, cuts).Money;
        var plan = new Solution(model, FreeParts.Fill(model, free, cuts).Where(cut => cut.Pattern.Cover.Length > 0));
        return (outcome.IsDecided ? Math.Max(bound, least) : bound, exact && plan.IsComplete ? plan : null);
    }
}
