using System.Diagnostics;
using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>
/// The second rival: the compact assignment model with shelves of the textbooks. Every piece that might be cut is a bin with shelves; an integer
/// variable says how many of a part lie on a shelf. Two stages and trimming. Copies are used in order and shelves lie in order of height, and the
/// best-fit assignment in two stages is the solver's start. Panels have no sound place in it.
/// </summary>
internal static class TextbookAssignment
{
    /// <summary>The best plan that the solver finds in the time; null if there is no start or none is found, or if the design has panels.</summary>
    public static Plan? Solve(PlanningProblem problem, TimeSpan budget)
    {
        var watch = Stopwatch.StartNew();
        if (problem.Design.Panels.Count > 0
            || BestFitDecreasing.Boards(problem with { Shop = problem.Shop with { Recut = false } }, strengthened: false) is not { } start)
        {
            return null;
        }

        var bought = start.GroupBy(board => board.Source.Supply).ToDictionary(group => group.Key, group => (long)group.Count(), StringComparer.Ordinal);
        var model = new ShelfModel(problem, ShelfBoard.Of(problem, Source.Of(problem), source =>
            source.Board?.Quantity ?? bought.GetValueOrDefault(source.Supply) + 1));
        model.Hint(start);
        var left = budget - watch.Elapsed;
        if (left <= TimeSpan.Zero || model.Solve(left) is not { } boards)
        {
            boards = start;
        }

        return RivalPlan.Write(problem, boards, budget, watch.Elapsed);
    }
}
