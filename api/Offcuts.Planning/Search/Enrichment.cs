using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// More patterns for an integer program: the best of every board at prices that differ at random from the linear program's,
/// some parts left out. Patterns that fill what others leave are seldom the best at the program's own prices.
/// </summary>
internal sealed class Enrichment(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostEach = 100;

    /// <summary>The patterns that so many changed prices give.</summary>
    public IEnumerable<Pattern> Run(double[] duals, Remainder rest, int times, Random random)
    {
        var noDuals = new double[model.Boards.Count];
        for (var n = 0; n < times && !clock.IsOver; n++)
        {
            var values = duals.Select(dual => random.Next(4) == 0 ? 0 : dual * (0.6 + (0.8 * random.NextDouble()))).ToArray();
            var prices = PriceList.FromDuals(model.Rows, values, rest.Need, 0);
            foreach (var pattern in pricer.Improving(prices, noDuals, new CostWeights(0, 0), MostEach, rest.Has, clock.Cancellation, thorough: false))
            {
                yield return pattern;
            }
        }
    }
}
