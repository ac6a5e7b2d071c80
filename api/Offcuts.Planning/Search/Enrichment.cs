using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// More patterns for an integer program: good ones of every board at prices that differ at random from the linear program's,
/// some parts left out. Patterns that fill what others leave are seldom the best at the program's own prices.
/// </summary>
internal sealed class Enrichment(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostEach = 100;

    /// <summary>What a pattern must give, of what its board counts for in the linear program.</summary>
    private const double Worthwhile = 0.75;

    /// <summary>The patterns that so many changed prices give.</summary>
    public IEnumerable<Pattern> Run(double[] duals, double[] boardDuals, Remainder rest, int times, Random random)
    {
        var eased = model.Boards.Select(board =>
            boardDuals[board.Index] + ((1 - Worthwhile) * (CostWeights.Blend(model).OfBoard(model, board) - boardDuals[board.Index]))).ToArray();
        for (var n = 0; n < times && !clock.IsOver; n++)
        {
            var values = duals.Select(dual => random.Next(4) == 0 ? 0 : dual * (0.6 + (0.8 * random.NextDouble()))).ToArray();
            var prices = PriceList.FromDuals(model.Rows, values, rest.Need, CostWeights.Blend(model).Worth);
            foreach (var pattern in pricer.Improving(prices, eased, CostWeights.Blend(model), MostEach, rest.Has, clock.Cancellation, thorough: false))
            {
                if (pattern.Cover.Length > 0)
                {
                    yield return pattern;
                }
            }
        }
    }
}
