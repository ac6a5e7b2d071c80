using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>
/// Large neighbourhood search: takes some bought boards and some others out of the best plan and plans anew for what they gave, the rest staying as it is.
/// </summary>
internal sealed class Neighbourhoods(PlanningModel model, SearchClock clock, PlansAtHand hand, TwoAtATime two, Random random)
{
    private const int LeastFreed = 4;
    private const int MostFreed = 30;
    private const int BoughtFreed = 7;
    private const double Smaller = 0.8;
    private const double Larger = 1.15;

    /// <summary>How many boards are freed, in the mean: fewer after programs that were too large to be solved, more after others.</summary>
    private double freed = 12;

    /// <summary>Rebuilds two neighbourhoods of the best plan, which must be complete.</summary>
    /// <param name="goal">What to look for.</param>
    /// <param name="duals">The linear program's prices of the rows.</param>
    /// <param name="boardDuals">And of the boards' limits, by board index.</param>
    public void Rebuild(PoolGoal goal, double[] duals, double[] boardDuals)
    {
        var (best, known) = (hand.Best!, hand.Patterns());
        var tooLarge = new bool[TwoAtATime.Times];
        two.Run(n =>
        {
            var kept = Keepers(best, duals, boardDuals);
            return (pricing, dice, found) =>
            {
                var rebuilding = new Rebuilding(model, pricing, known, clock, found);
                var solution = rebuilding.Run(kept, best, goal, dice);
                tooLarge[n] = rebuilding.WasTooLarge;
                return [solution];
            };
        });
        foreach (var large in tooLarge)
        {
            freed = Math.Clamp(freed * (large ? Smaller : Larger), LeastFreed, MostFreed);
        }
    }

    /// <summary>
    /// The cuts that stay: all but a few bought boards and some others, those first that cost more than the linear program's prices
    /// give for what they make: these losses add up to what the plan costs more than the bound.
    /// </summary>
    private List<(Pattern Pattern, int Count)> Keepers(Solution best, double[] duals, double[] boardDuals)
    {
        var losses = best.Cuts.Select(cut => Math.Max(0, CostWeights.Blend(model).Reduced(model, cut.Pattern, duals, boardDuals))).ToList();
        var even = 1e-9 + (losses.Sum() / Math.Max(1, losses.Count));
        var order = best.Cuts.Select((cut, at) => (Cut: cut, At: -Math.Log(1 - random.NextDouble()) / (losses[at] + even)))
            .OrderBy(entry => entry.At).Select(entry => entry.Cut).ToList();
        var free = (int)(freed * (0.6 + (0.8 * random.NextDouble())));
        return [.. order.Where(cut => cut.Pattern.Money == 0).Skip(free), .. order.Where(cut => cut.Pattern.Money > 0).Skip(Math.Min(BoughtFreed, 1 + (free / 2)))];
    }
}
