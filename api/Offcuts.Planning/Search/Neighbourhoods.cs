using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>
/// Large neighbourhood search: takes some bought boards and some others out of the best plan and plans anew for what they gave, the rest staying as it is.
/// </summary>
internal sealed class Neighbourhoods(PlanningModel model, SearchClock clock, PlansAtHand hand, TwoAtATime two, Random random)
{
    private const int LeastFreed = 6;
    private const int BoughtFreed = 7;

    /// <summary>Rebuilds two neighbourhoods of the best plan, which must be complete.</summary>
    /// <param name="goal">What to look for.</param>
    /// <param name="duals">The linear program's prices of the rows.</param>
    /// <param name="boardDuals">And of the boards' limits, by board index.</param>
    public void Rebuild(PoolGoal goal, double[] duals, double[] boardDuals)
    {
        var (best, known) = (hand.Best!, hand.Patterns());
        two.Run(_ =>
        {
            var kept = Keepers(best, duals, boardDuals);
            return (pricing, dice, found) => [new Rebuilding(model, pricing, known, clock, found).Run(kept, best, goal, dice)];
        });
    }

    /// <summary>
    /// The cuts that stay: all but a few bought boards and some others, those first that cost more than the linear program's prices
    /// give for what they make: these losses add up to what the plan costs more than the bound.
    /// </summary>
    private List<(Pattern Pattern, int Count)> Keepers(Solution best, double[] duals, double[] boardDuals)
    {
        var losses = best.Cuts.Select(cut => Math.Max(0, CostWeights.Blend(model).Of(cut.Pattern) - boardDuals[cut.Pattern.Board.Index]
            - cut.Pattern.Cover.Sum(cover => duals[cover.Row] * Share(cover.Row, cover.Amount)))).ToList();
        var even = 1e-9 + (losses.Sum() / Math.Max(1, losses.Count));
        var order = best.Cuts.Select((cut, at) => (Cut: cut, At: -Math.Log(1 - random.NextDouble()) / (losses[at] + even)))
            .OrderBy(entry => entry.At).Select(entry => entry.Cut).ToList();
        var free = LeastFreed + random.Next(1 + Math.Min(20, best.Cuts.Count / 2));
        return [.. order.Where(cut => cut.Pattern.Money == 0).Skip(free), .. order.Where(cut => cut.Pattern.Money > 0).Skip(BoughtFreed)];
    }

    private double Share(int row, long amount) => model.Rows[row] is StripRow ? (double)amount / model.Rows[row].Needed : amount;
}
