using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// A lower bound on what a plan uses up, worth consumed less worth returned as plans tell them, over all plans of a model that spend no more than so much money.
/// </summary>
/// <remarks>
/// For any prices v >= 0 of the rows and any m >= 0 of a minor unit of money, such a plan, which uses patterns p of boards b, uses up
/// <code>
/// sum_p (consumed_b - returned_p) >= sum_r need_r v_r - m money + sum_p (consumed_b + m price_b - returned_p - sum_r v_r a_rp)
///     >= sum_r need_r v_r - m money + sum over supplies of capacity * min(0, least of consumed_b + m price_b - V_b)
/// </code>
/// because it makes sum_p a_rp >= need_r and spends sum_p price_b &lt;= money. V_b is at least the best value of any pattern of b that makes anything, leftovers
/// counted in full (<see cref="PatternPricer.BestValuesWithLeftovers"/>). No board that costs more than the money is bought. The prices come from column generation on the worth, with the
/// money as a constraint. What counts in the search for handling, for reach and for keeping an earlier plan's cuts is none of it, so that the bound speaks
/// of what the plan tells; cutting extra pieces from leftovers only uses up more. What floating point may be wrong by is taken off: at most
/// <see cref="Margin"/> of all that is added up, which is many times what as many roundings can make of it.
/// </remarks>
internal sealed class WorthBound
{
    private const double Margin = 1e-9;
    private const int MostPerRound = 150;
    private const int MostRounds = 60;

    /// <summary>A bound this near to the linear program's value, in minor units, is not worth more rounds.</summary>
    private const double NearEnough = 0.01;

    /// <summary>A bound that time cut short is told if it is no further below the linear program's value than this part of it: the first ones say nothing.</summary>
    private const double StillTelling = 0.1;
    private readonly PlanningModel model;
    private readonly PatternPricer pricer;
    private readonly long[] need;
    private readonly long mostMoney;

    /// <param name="model">The model.</param>
    /// <param name="mostMoney">The most money that is spent.</param>
    public WorthBound(PlanningModel model, long mostMoney)
    {
        this.model = model.WithoutHandling();
        this.mostMoney = mostMoney;
        pricer = new PatternPricer(this.model);
        need = new Remainder(this.model).Need;
    }

    /// <summary>The best bound that column generation meets within a time, in minor units; null if that is too short for one that tells anything.</summary>
    /// <param name="known">Patterns to begin with.</param>
    /// <param name="clock">Ends it too.</param>
    /// <param name="time">How long it may take.</param>
    public double? Of(IEnumerable<Pattern> known, SearchClock clock, TimeSpan time)
    {
        var end = clock.Elapsed + time;
        using var master = new MasterProblem(model, new CostWeights(0, 1), mostMoney);
        foreach (var pattern in known.Where(pattern => pattern.Money <= mostMoney))
        {
            master.Add(PatternFactory.Create(model, pattern.Board, pattern.Division, pattern.Areas), byWorth: true);
        }

        double? best = null;
        var isDone = false;
        for (var round = 0; round < MostRounds && !isDone && clock.Elapsed < end && !clock.Cancellation.IsCancellationRequested && master.Solve(); round++)
        {
            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, 1).WithAllLeftovers(model.Rows);
            var bound = At(prices, master.MoneyPrice);
            best = best is { } before ? Math.Max(before, bound) : bound;
            isDone = best >= master.Objective - NearEnough || !Grow(master, prices, clock);
        }

        return isDone || best >= master.Objective - (StillTelling * Math.Abs(master.Objective)) ? best : null;
    }

    /// <summary>Adds the patterns that the prices call for, overrated as they are: that drives the prices to where the bound is best.</summary>
    private bool Grow(MasterProblem master, PriceList prices, SearchClock clock)
    {
        var any = false;
        foreach (var pattern in pricer.Improving(
            prices, master.BoardDuals, new CostWeights(master.MoneyPrice, 1), MostPerRound, board => board.Price <= mostMoney, clock.Cancellation, proper: false))
        {
            any |= master.Add(pattern, beyondNeed: true, byWorth: true);
        }

        return any;
    }

    /// <summary>The bound at some prices.</summary>
    /// <param name="prices">What the rows are worth; <see cref="PriceList.WithAllLeftovers"/>.</param>
    /// <param name="moneyPrice">What a minor unit of money is worth.</param>
    public double At(PriceList prices, double moneyPrice)
    {
        prices = prices.Even(model);
        var values = pricer.BestValuesWithLeftovers(prices);
        var demand = prices.OfDemand();
        var (bound, size) = (demand - (moneyPrice * mostMoney), demand + (moneyPrice * mostMoney));
        foreach (var supply in model.Boards.Where(board => board.Price <= mostMoney).GroupBy(board => board.Supply))
        {
            var capacity = model.Supplies[supply.Key].Capacity;
            bound += capacity * Math.Min(0, supply.Min(board => board.WorthConsumed + (moneyPrice * board.Price) - values[board.Index]));
            size += capacity * supply.Max(board => board.WorthConsumed + (moneyPrice * board.Price) + values[board.Index]);
        }

        return bound - (Margin * size);
    }
}
