using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// Raises the bound on the money by branching on what is bought. The linear program buys fractions of boards; whoever buys
/// must buy none, one, two. Each node fixes ranges for the number bought of an offer or of one of its sizes; the least bound
/// of the open nodes holds for all plans. Best bound first.
/// </summary>
internal sealed class PurchaseTree(PlanningModel model, PurchaseProgram program, PatternListing listing, SearchClock clock, Action<Solution> found)
{
    private const int MostNodes = 2000;
    private const double Whole = 1e-6;
    private PriorityQueue<Purchases, double>? open;

    // The least bound of the nodes that are done with.
    private double least = double.PositiveInfinity;
    private int nodes;

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

        using var master = program.Open(pool);
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
            known = Math.Min(known, Branch(master, node, Math.Max(bound, program.Bound(master, node, known)), known, until - clock.Elapsed));
        }

        var bounds = Math.Min(least, open.TryPeek(out _, out var next) ? next : double.PositiveInfinity);
        return Math.Max(root, Math.Min(bounds, known));
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
            var (settled, solution) = listing.Settle(program.Duals, node, bound, known, left);
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
