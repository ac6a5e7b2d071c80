using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Bounds;

/// <summary>A lower bound on the money that holds whatever the linear solver's rounding did.</summary>
internal static class SafeBound
{
    private const double Margin = 1e-12;

    /// <summary>A bound this near to the linear program's value, in minor units, is not worth more rounds; nor in parts of it, where that is less.</summary>
    private const double NearEnough = 0.01;
    private const double NearEnoughPart = 1e-6;

    /// <summary>Whether a bound can hardly rise further at a linear program of a given value.</summary>
    public static bool IsAsGoodAs(double bound, double objective) => bound >= objective - Math.Min(NearEnough, NearEnoughPart * Math.Abs(objective));

    /// <summary>The bound with every supply free within its capacity.</summary>
    public static double Of(PlanningModel model, PatternPricer pricer, PriceList prices) =>
        Of(model, pricer, prices, Purchases.Free(model));

    /// <summary>
    /// The Lagrangian bound: for any prices v >= 0 no plan that buys within the given ranges costs less than
    /// sum_r need_r v_r + min { sum_b n_b (price_b - best value of a pattern of b) : n within the ranges }.
    /// It holds for a fraction of the prices as well, and with such a fraction a board that may be bought without limit is worth
    /// no more than it costs (Farley 1990); the best of the fractions at which one of them is worth just that counts.
    /// </summary>
    public static double Of(PlanningModel model, PatternPricer pricer, PriceList prices, Purchases purchases)
    {
        prices = prices.Even(model);
        return Of(model, prices, pricer.BestValues(prices), purchases);
    }

    /// <summary>The bound at even prices where it is known what boards are worth at most.</summary>
    public static double Of(PlanningModel model, PriceList prices, double[] values, Purchases purchases)
    {
        return Fractions(model, values).Max(fraction => At(fraction, prices, values, purchases));
    }

    /// <summary>The fraction of the prices at which the bound is best.</summary>
    public static double BestFraction(PlanningModel model, PriceList prices, double[] values, Purchases purchases) =>
        Fractions(model, values).MaxBy(fraction => At(fraction, prices, values, purchases));

    private static IEnumerable<double> Fractions(PlanningModel model, double[] values) => model.Boards
        .Where(board => board.Price > 0 && values[board.Index] > board.Price)
        .Select(board => board.Price / values[board.Index] * (1 - Margin)).Append(1).Distinct();

    /// <summary>
    /// The bound at a fraction of the prices. Prices are on a binary grid (see <see cref="PriceList"/>) and every sum of them is
    /// exact; what a fraction of a best value might lack by rounding is added.
    /// </summary>
    public static double At(double fraction, PriceList prices, double[] values, Purchases purchases)
    {
        var upward = fraction < 1 ? fraction * (1 + (Margin / 2)) : 1;
        var bound = prices.Times(fraction).OfDemand();
        foreach (var supply in purchases.BySupply)
        {
            bound += Least(supply.Range, [.. supply.Boards.Select(board =>
                (Reduced: board.Price - (upward * values[board.Index]), Range: purchases.OfBoard(board)))]);
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
