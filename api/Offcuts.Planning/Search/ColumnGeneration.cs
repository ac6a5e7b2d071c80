using Offcuts.Planning.Bounds;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>Column generation (Gilmore and Gomory 1961, 1965): solve, price, add, until nothing improves.</summary>
internal static class ColumnGeneration
{
    private const int MostPerRound = 150;
    private const int MostBoundRounds = 60;

    /// <summary>Runs until no pattern improves, a number of rounds has passed or time is up; says whether it converged.</summary>
    public static bool Run(
        PlanningModel model, MasterProblem master, PatternPricer pricer, CostWeights weights, long[] need, SearchClock clock,
        int mostRounds, Func<BoardType, bool> allowed, Action<Pattern>? added = null, bool thorough = true)
    {
        for (var round = 0; round < mostRounds; round++)
        {
            if (clock.IsOver || !master.Solve())
            {
                return false;
            }

            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, weights.Worth);
            var any = false;
            foreach (var pattern in pricer.Improving(prices, master.BoardDuals, weights, MostPerRound, allowed, clock.Cancellation, thorough: thorough))
            {
                if (master.Add(pattern))
                {
                    any = true;
                    added?.Invoke(pattern);
                }
            }

            if (!any)
            {
                return true;
            }
        }

        master.Solve();
        return false;
    }

    /// <summary>
    /// Improves the bound on the money where needs couple the sections of a board: the pricing then overrates patterns, and the
    /// bound at the prices of the proper patterns is weak. Adding the overrated patterns as they are drives the prices to where
    /// the bound is best. Gives the best bound met, at least <paramref name="known"/>.
    /// </summary>
    public static double TightenBound(
        PlanningModel model, MasterProblem master, PatternPricer pricer, long[] need, SearchClock clock, double known)
    {
        for (var round = 0; round < MostBoundRounds && !clock.IsOver && master.Solve(); round++)
        {
            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0);
            known = Math.Max(known, SafeBound.Of(model, pricer, prices));
            if (SafeBound.IsAsGoodAs(known, master.Objective))
            {
                break;
            }

            var any = false;
            foreach (var pattern in pricer.Improving(
                prices, master.BoardDuals, CostWeights.MoneyOnly, MostPerRound, _ => true, clock.Cancellation, proper: false))
            {
                any |= master.Add(pattern, beyondNeed: true);
            }

            if (!any)
            {
                break;
            }
        }

        return known;
    }
}
