using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Bounds;

/// <summary>A lower bound on the money that holds whatever the linear solver's rounding did.</summary>
internal static class SafeBound
{
    /// <summary>
    /// The Lagrangian bound: for any prices v >= 0 no plan costs less than
    /// sum_r need_r v_r + sum_supplies capacity min(0, min_b (price_b - best value of a pattern of b)).
    /// The prices are on a binary grid (see <see cref="PriceList"/>), so every sum is exact.
    /// </summary>
    public static double Of(PlanningModel model, PatternPricer pricer, PriceList prices)
    {
        var values = pricer.BestValues(prices);
        var least = new double[model.Supplies.Count];
        foreach (var board in model.Boards)
        {
            least[board.Supply] = Math.Min(least[board.Supply], board.Price - values[board.Index]);
        }

        return prices.OfDemand() + model.Supplies.Sum(supply => supply.Capacity * least[supply.Index]);
    }
}
