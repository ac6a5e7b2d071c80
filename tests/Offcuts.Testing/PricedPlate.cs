using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using PriceList = Offcuts.Planning.Pricing.PriceList;

namespace Offcuts.Testing;

/// <summary>
/// The best pattern of a plate by the planner's pricing alone, without a plan. What any pattern can be worth is bounded by knapsacks with discounts on what they
/// count too often; from there down all patterns that are worth so much are listed until there is one.
/// </summary>
public static class PricedPlate
{
    private const int MostSteps = 100;
    private const int MostThresholds = 200;
    private const int MostCells = 12_000;
    private const long MostEffort = 50_000_000;

    /// <summary>What the best pattern is worth; null if there is too much to list.</summary>
    /// <param name="problem">A problem whose one board in stock is the plate, and in which each item can be bought for its profit as a species of its own name.</param>
    /// <param name="ripFirst">Whether the first cuts go along the plate.</param>
    public static long? Best(PlanningProblem problem, bool ripFirst)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var model = new ModelBuilder(problem).Build(Wanted.All(problem.Design));
        var plate = model.Boards.Single(board => board.Price == 0);
        var view = new BoardView(
            model, new OrientedProfile(plate.Profile, ripFirst, model.Kerf, (plate.Along, plate.Across), MostCells, roundDown: false), [plate]);
        var profits = problem.Offers.ToDictionary(offer => offer.Species, offer => (double)((ByThePiece)offer.Form).PricePerPiece.MinorUnits, StringComparer.Ordinal);
        var prices = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(row => profits[row.Name])], [.. model.Rows.Select(row => row.Needed)], 0);
        var (most, discount) = view.Proper.Bound(plate, prices, 0, MostSteps);

        // A little less of it, so that nothing becomes worthless and is left out.
        discount = [.. discount.Select(each => PriceList.OnGrid(0.999 * each))];
        var (discounted, refund) = (prices.Less(discount), view.Proper.Refund(discount, prices));
        for (var step = 0; step <= MostThresholds; step++)
        {
            // What is worth so much at the prices is worth that less the refund at the discounted ones, and so is listed.
            var least = most * (1 - (0.5 * step * step / (MostThresholds * MostThresholds)));
            var effort = new ListingEffort(MostEffort, () => false);
            if (view.Near(discounted, [plate], new Dictionary<BoardType, double> { [plate] = least - refund }, effort) is not { } found)
            {
                return null;
            }

            var best = found.Select(near => near.Made.Counts.Select((count, row) => prices.Piece[row] * count).Sum()).DefaultIfEmpty(0).Max();
            if (best >= least)
            {
                return (long)best;
            }
        }

        return null;
    }
}
