using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>The stock as the search sees it.</summary>
internal static class CountedStock
{
    /// <summary>The boards, of which one whose size was estimated is only as large as it surely is; those of which nothing is sure are left out.</summary>
    public static List<Board> Of(PlanningProblem problem) =>
        [.. problem.Stock.Select(board => Estimates.Counted(board, problem.Shop.EstimateMargin)).OfType<Board>()];
}
