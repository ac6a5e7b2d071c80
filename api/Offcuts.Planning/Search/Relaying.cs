using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Lays out every board of a plan anew: the same parts from the same board, so that what is left over is worth most. The patterns of a
/// search are the best for its prices, which say little about two ways to cut the same parts.
/// </summary>
internal sealed class Relaying(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostEach = 20;

    /// <summary>The plan with the boards laid out anew where that is better.</summary>
    public Solution Run(Solution solution) =>
        new(model, solution.Cuts.Select(cut => (clock.IsOver ? cut.Pattern : Best(cut.Pattern), cut.Count)).ToList());

    private Pattern Best(Pattern pattern)
    {
        var need = new long[model.Rows.Count];
        var values = new double[need.Length];
        var each = 100 * (100 + pattern.Board.Price + pattern.Board.WorthConsumed);
        foreach (var (row, amount) in pattern.Cover)
        {
            need[row] = amount;
            values[row] = model.Rows[row] is StripRow strip ? each * strip.Needed / amount : each;
        }

        var prices = PriceList.FromDuals(model.Rows, values, need, worthWeight: 1);
        return pricer.Improving(
                prices, new double[model.Boards.Count], new CostWeights(0, 1), MostEach, board => board == pattern.Board, clock.Cancellation)
            .Where(other => pattern.Cover.All(cover => other.Cover.Any(made => made.Row == cover.Row && made.Amount >= cover.Amount)))
            .Append(pattern).MinBy(other => other.Worth)!;
    }
}
