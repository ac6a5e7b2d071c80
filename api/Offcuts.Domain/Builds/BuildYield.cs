namespace Offcuts.Domain;

/// <summary>How well a build used its wood, as far as its boards are cut.</summary>
/// <param name="ConsumedCubicMetres">The boards less what went back to the rack.</param>
/// <param name="PartsCubicMetres">Blanks of parts and strips of panels, as sawn.</param>
/// <param name="RackCubicMetres">Those of them that came from boards which the shop had.</param>
/// <param name="NotSpent">What as much wood as these would have cost to buy, by the rates with which the plan was made.</param>
/// <param name="Spent">What the boards cost that were bought for it.</param>
public sealed record BuildYield(decimal ConsumedCubicMetres, decimal PartsCubicMetres, decimal RackCubicMetres, Money NotSpent, Money Spent)
{
    /// <summary>Parts of the wood consumed; null while nothing is.</summary>
    public decimal? Yield => ConsumedCubicMetres > 0 ? PartsCubicMetres / ConsumedCubicMetres : null;

    /// <summary>The share of the parts that came from boards which the shop had; null while there are none.</summary>
    public decimal? RackShare => PartsCubicMetres > 0 ? RackCubicMetres / PartsCubicMetres : null;

    /// <summary>The yield of a build.</summary>
    /// <param name="build">What was said of it.</param>
    /// <param name="plan">Its plan.</param>
    /// <param name="problem">What the plan was made from.</param>
    public static BuildYield Of(Build build, Plan plan, PlanningProblem problem)
    {
        var cuts = plan.Boards.ToDictionary(board => board.Number);
        var (bought, owned) = (build.Closed.Where(board => board.IsBought).ToList(), build.Closed.Where(board => !board.IsBought).ToList());
        return new BuildYield(
            build.Closed.Sum(board => CubicMetres(board, board.Balance.Board - board.Balance.Leftovers)),
            build.Closed.Sum(board => CubicMetres(board, board.Balance.Parts)),
            owned.Sum(board => CubicMetres(board, board.Balance.Parts)),
            new Money((long)decimal.Floor(owned.Sum(board =>
                CubicMetres(board, board.Balance.Parts) / BoardMeasure.CubicMetresPerBoardFoot * problem.Rates.Of(cuts[board.Number].Species).MinorUnits))),
            new Money(bought.Sum(board => plan.PurchaseOf(cuts[board.Number]).Offer.Price.MinorUnits)));
    }

    private static decimal CubicMetres(ClosedBoard board, Area area) => board.Thickness.Millimetres * area.SquareMillimetres / 1_000_000_000m;
}
