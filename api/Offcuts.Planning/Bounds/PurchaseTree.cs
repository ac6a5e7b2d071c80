using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// Raises the bound on the money by branching on what is bought. The linear program buys fractions of boards; whoever buys
/// must buy none, one, two. Each node fixes ranges for the number bought of an offer or of one of its sizes; the least bound
/// of the open nodes holds for all plans. Best bound first.
/// </summary>
internal sealed class PurchaseTree(PlanningModel model, PatternPricer pricer, SearchClock clock, Action<Solution> found, Action<Pattern> listed)
{
    private const int MostNodes = 2000;
    private const int MostRounds = 40;
    private const int MostColumns = 100;
    private const int Corners = 4;
    private const int RoundsPerCorner = 20;

    /// <summary>What is asked for more at most of a row to find another corner, in pieces.</summary>
    private const double MostMore = 1e-3;
    private const double Whole = 1e-6;
    private readonly List<Pattern> overcounting = [];
    private readonly PatternListing listing = new(model, pricer, clock, listed);
    private PriorityQueue<Purchases, double>? open;

    // The least bound of the nodes that are done with.
    private double least = double.PositiveInfinity;
    private int nodes;

    private double[] duals = [];

    /// <summary>
    /// The bound after branching, at least <paramref name="root"/>; stops when it reaches <paramref name="known"/>, the cost of a plan
    /// at hand. Called again, it goes on where it stopped.
    /// </summary>
    /// <param name="pool">Patterns to start from.</param>
    /// <param name="root">A bound known before.</param>
    /// <param name="known">The cost of a plan at hand.</param>
    /// <param name="share">The most time for it.</param>
    public double Raise(IEnumerable<Pattern> pool, double root, long known, TimeSpan share)
    {
        if (open is null)
        {
            open = new PriorityQueue<Purchases, double>();
            open.Enqueue(Purchases.Free(model), root);
        }

        using var master = Master(pool);
        var until = clock.Elapsed + share;
        while (nodes < MostNodes && open.TryPeek(out var node, out var bound) && bound < least && !IsEnough(bound, known))
        {
            if (clock.IsOver || clock.Elapsed > until)
            {
                clock.NoteCutShort();
                break;
            }

            nodes++;
            open.Dequeue();
            node.Apply(master);
            known = Math.Min(known, Branch(master, node, Math.Max(bound, Bound(master, node, known)), known, until - clock.Elapsed));
        }

        var bounds = Math.Min(least, open.TryPeek(out _, out var next) ? next : double.PositiveInfinity);
        return Math.Max(root, Math.Min(bounds, known));
    }

    /// <summary>
    /// Asks once whether there is a plan for as little as <paramref name="target"/>, a bound known, before any is known that costs little more: where
    /// few totals are possible the linear program may be so near to one of them that few patterns can matter. Gives the bound afterwards.
    /// </summary>
    public double Sharpen(IEnumerable<Pattern> pool, double root, long target, TimeSpan limit)
    {
        using var master = Master(pool);
        var free = Purchases.Free(model);
        free.Apply(master);
        var bound = Math.Max(root, Bound(master, free, target + 1));
        if (bound > target || clock.IsOver)
        {
            return bound;
        }

        var (settled, solution) = listing.Settle(Central(master), free, bound, target + 1, limit);
        if (solution is not null)
        {
            found(solution);
        }

        return settled;
    }

    private MasterProblem Master(IEnumerable<Pattern> pool)
    {
        var master = new MasterProblem(model, CostWeights.MoneyOnly);
        foreach (var pattern in pool)
        {
            master.Add(pattern);
        }

        foreach (var pattern in overcounting)
        {
            master.Add(pattern, beyondNeed: true);
        }

        return master;
    }

    private bool IsEnough(double bound, long known) =>
        bound >= known || AttainableTotals.RoundUp(bound, known, model.Boards.Select(board => board.Price)) >= known;

    /// <summary>Branches on a node; gives the cost of the cheapest plan known then.</summary>
    private long Branch(MasterProblem master, Purchases node, double bound, long known, TimeSpan left)
    {
        if (IsEnough(bound, known))
        {
            // A cheaper plan found later may still be in there.
            least = Math.Min(least, Math.Max(bound, known));
            return known;
        }

        // Where purchases are whole and still cheaper than what is known, branching on them cannot raise the bound further.
        var children = Children(master, node);
        if (children.Count == 0)
        {
            var (settled, solution) = listing.Settle(duals, node, bound, known, left);
            least = Math.Min(least, settled);
            if (solution is not null)
            {
                found(solution);
                known = Math.Min(known, solution.Money);
            }
        }

        foreach (var child in children)
        {
            open!.Enqueue(child, bound);
        }

        return known;
    }

    /// <summary>The node's bound by column generation with patterns as the knapsacks count them.</summary>
    private double Bound(MasterProblem master, Purchases node, long known)
    {
        var best = 0.0;
        duals = (double[])master.CoverDuals.Clone();
        var need = model.Rows.Select(row => row.Needed).ToArray();
        for (var round = 0; round < MostRounds && !clock.IsOver && master.Solve(); round++)
        {
            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0);
            if (SafeBound.Of(model, pricer, prices, node) is var bound && bound > best)
            {
                best = bound;
                duals = (double[])master.CoverDuals.Clone();
            }

            if (best >= known || SafeBound.IsAsGoodAs(best, master.Objective))
            {
                break;
            }

            if (!Price(master))
            {
                break;
            }
        }

        return best;
    }

    /// <summary>
    /// The mean of some of the duals that are as good as the best. Those of one solution are a corner of what is possible, where many patterns lack
    /// nothing to the best and small parts cost nothing; a little more asked of every row, at random, leads to another corner.
    /// </summary>
    private double[] Central(MasterProblem master)
    {
        var random = new Random(1);
        var corners = new List<double[]> { duals };
        for (var corner = 0; corner < Corners; corner++)
        {
            master.AskForMore([.. model.Rows.Select(_ => MostMore * random.NextDouble())]);
            for (var round = 0; round < RoundsPerCorner && !clock.IsOver && master.Solve(); round++)
            {
                if (!Price(master))
                {
                    corners.Add((double[])master.CoverDuals.Clone());
                    break;
                }
            }
        }

        master.AskForMore(new double[model.Rows.Count]);
        return [.. model.Rows.Select(row => corners.Average(corner => corner[row.Index]))];
    }

    /// <summary>Adds patterns that improve the linear program; whether there were any.</summary>
    private bool Price(MasterProblem master)
    {
        var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, [.. model.Rows.Select(row => row.Needed)], 0);
        var any = false;
        foreach (var pattern in pricer.Improving(
            prices, master.BoardDuals, CostWeights.MoneyOnly, MostColumns, _ => true, clock.Cancellation, proper: false))
        {
            if (master.Add(pattern, beyondNeed: true))
            {
                any = true;
                overcounting.Add(pattern);
            }
        }

        return any;
    }

    private List<Purchases> Children(MasterProblem master, Purchases node)
    {
        var bySupply = new double[model.Supplies.Count];
        var byBoard = new double[model.Boards.Count];
        for (var p = 0; p < master.Patterns.Count && p < master.Values.Length; p++)
        {
            var board = master.Patterns[p].Board;
            if (board.Price > 0)
            {
                bySupply[board.Supply] += master.Values[p];
                byBoard[board.Index] += master.Values[p];
            }
        }

        var supply = MostFractional(bySupply);
        if (supply >= 0)
        {
            var (range, floor) = (node.OfSupply(supply), (long)Math.Floor(bySupply[supply]));
            return Halves(range, floor).Select(each => node.WithSupply(supply, each)).ToList();
        }

        var type = MostFractional(byBoard);
        if (type < 0)
        {
            return [];
        }

        var (boardRange, below) = (node.OfBoard(model.Boards[type]), (long)Math.Floor(byBoard[type]));
        return Halves(boardRange, below).Select(each => node.WithBoard(model.Boards[type], each)).ToList();
    }

    private static IEnumerable<PurchaseRange> Halves(PurchaseRange range, long floor)
    {
        if (floor >= range.Least)
        {
            yield return range with { Most = Math.Min(range.Most, floor) };
        }

        if (floor + 1 <= range.Most)
        {
            yield return range with { Least = Math.Max(range.Least, floor + 1) };
        }
    }

    private static int MostFractional(double[] values)
    {
        var (best, at) = (Whole, -1);
        for (var index = 0; index < values.Length; index++)
        {
            var distance = Math.Abs(values[index] - Math.Round(values[index]));
            if (distance > best)
            {
                (best, at) = (distance, index);
            }
        }

        return at;
    }
}
