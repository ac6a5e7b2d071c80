using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Bounds;

/// <summary>A lower bound on the money that holds whatever the linear solver's rounding did.</summary>
internal static class SafeBound
{
    /// <summary>The bound with every supply free within its capacity.</summary>
    public static double Of(PlanningModel model, PatternPricer pricer, PriceList prices) =>
        Of(model, pricer, prices, Purchases.Free(model));

    /// <summary>
    /// The Lagrangian bound: for any prices v >= 0 no plan that buys within the given ranges costs less than
    /// sum_r need_r v_r + min { sum_b n_b (price_b - best value of a pattern of b) : n within the ranges }.
    /// The prices are on a binary grid (see <see cref="PriceList"/>), so every sum is exact.
    /// </summary>
    public static double Of(PlanningModel model, PatternPricer pricer, PriceList prices, Purchases purchases)
    {
        var values = pricer.BestValues(prices);
        var bound = prices.OfDemand();
        foreach (var supply in purchases.BySupply)
        {
            bound += Least(supply.Range, [.. supply.Boards.Select(board =>
                (Reduced: board.Price - values[board.Index], Range: purchases.OfBoard(board)))]);
        }

        return bound;
    }

    /// <summary>Least sum of n r with each n and the sum of all n in their ranges: as many as must be, the cheapest first.</summary>
    private static double Least(PurchaseRange total, List<(double Reduced, PurchaseRange Range)> boards)
    {
        boards.Sort((one, other) => one.Reduced.CompareTo(other.Reduced));
        var sum = boards.Sum(board => board.Reduced * board.Range.Least);
        var taken = boards.Sum(board => board.Range.Least);
        foreach (var (reduced, range) in boards)
        {
            var more = Math.Min(range.Most - range.Least, (reduced < 0 ? total.Most : total.Least) - taken);
            if (more > 0)
            {
                sum += reduced * more;
                taken += more;
            }
        }

        return sum;
    }
}
