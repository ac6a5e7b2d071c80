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
internal sealed class PurchaseTree(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostNodes = 400;
    private const int MostRounds = 40;
    private const int MostColumns = 100;
    private const double Whole = 1e-6;

    /// <summary>The bound after branching, at least <paramref name="root"/>; stops when it reaches <paramref name="known"/>, the cost of a plan at hand.</summary>
    /// <param name="pool">Patterns to start from.</param>
    /// <param name="root">A bound known before.</param>
    /// <param name="known">The cost of a plan at hand.</param>
    /// <param name="share">The most time for it.</param>
    public double Raise(IEnumerable<Pattern> pool, double root, long known, TimeSpan share)
    {
        using var master = new MasterProblem(model, CostWeights.MoneyOnly);
        foreach (var pattern in pool)
        {
            master.Add(pattern);
        }

        var prices = model.Boards.Select(board => board.Price).ToList();
        var until = clock.Elapsed + share;
        var open = new PriorityQueue<Purchases, double>();
        open.Enqueue(Purchases.Free(model), root);
        for (var nodes = 0; nodes < MostNodes && open.TryPeek(out var node, out var bound); nodes++)
        {
            if (AttainableTotals.RoundUp(bound, known, prices) >= known)
            {
                return known;
            }

            if (clock.IsOver || clock.Elapsed > until)
            {
                if (clock.Elapsed > until)
                {
                    clock.NoteCutShort();
                }

                return bound;
            }

            open.Dequeue();
            node.Apply(master);
            var better = Math.Max(bound, Bound(master, node, known));
            if (better >= known || AttainableTotals.RoundUp(better, known, prices) >= known)
            {
                continue;
            }

            var children = Branch(master, node);
            if (children.Count == 0)
            {
                // Whole purchases and still cheaper than what is known: nothing here can raise the bound further.
                return Math.Max(root, open.TryPeek(out _, out var next) ? Math.Min(next, better) : better);
            }

            foreach (var child in children)
            {
                open.Enqueue(child, better);
            }
        }

        return open.TryPeek(out _, out var least) ? least : known;
    }

    /// <summary>The node's bound by column generation with patterns as the knapsacks count them.</summary>
    private double Bound(MasterProblem master, Purchases node, long known)
    {
        var best = 0.0;
        var need = model.Rows.Select(row => row.Needed).ToArray();
        for (var round = 0; round < MostRounds && !clock.IsOver && master.Solve(); round++)
        {
            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0);
            best = Math.Max(best, SafeBound.Of(model, pricer, prices, node));
            if (best >= known || best >= master.Objective - 0.01)
            {
                break;
            }

            var any = false;
            foreach (var pattern in pricer.Improving(
                prices, master.BoardDuals, CostWeights.MoneyOnly, MostColumns, _ => true, clock.Cancellation, proper: false))
            {
                any |= master.Add(pattern, beyondNeed: true);
            }

            if (!any)
            {
                break;
            }
        }

        return best;
    }

    private List<Purchases> Branch(MasterProblem master, Purchases node)
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
            return Children(range, floor).Select(each => node.WithSupply(supply, each)).ToList();
        }

        var type = MostFractional(byBoard);
        if (type < 0)
        {
            return [];
        }

        var (boardRange, below) = (node.OfBoard(model.Boards[type]), (long)Math.Floor(byBoard[type]));
        return Children(boardRange, below).Select(each => node.WithBoard(model.Boards[type], each)).ToList();
    }

    private static IEnumerable<PurchaseRange> Children(PurchaseRange range, long floor)
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
