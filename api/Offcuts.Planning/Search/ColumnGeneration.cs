using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>Column generation (Gilmore and Gomory 1961, 1965): solve, price, add, until nothing improves.</summary>
internal static class ColumnGeneration
{
    private const int MostPerRound = 150;

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
}
