using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Layout;

/// <summary>Saws the boards of a solution, in the order in which the maker cuts them.</summary>
internal static class Sawing
{
    /// <summary>The boards of the solutions of all components.</summary>
    public static List<SawnBoard> Of(PlanningProblem problem, IReadOnlyList<(PlanningModel Model, Solution Solution)> solved)
    {
        var patterns = solved.SelectMany(each =>
        {
            var names = new PieceNames(each.Model);
            return Surplus.Remove(each.Model, each.Solution).Select(pattern => (Pattern: pattern, Names: names));
        });
        var ordered = patterns
            .OrderBy(each => each.Pattern.Board.Class.Species, StringComparer.Ordinal).ThenBy(each => each.Pattern.Board.Size.Thickness)
            .ThenBy(each => each.Pattern.Money > 0).ThenByDescending(each => each.Pattern.Board.Along).ThenBy(each => each.Pattern.Board.Index)
            .ThenBy(each => each.Pattern.Key, StringComparer.Ordinal);
        var trims = new Trims(problem.Shop);
        var taken = new Dictionary<BoardType, int>();
        var sawn = new List<SawnBoard>();
        foreach (var (pattern, names) in ordered)
        {
            var type = pattern.Board;
            var nth = taken[type] = taken.GetValueOrDefault(type) + 1;
            var (board, copy) = StockCopy(type, nth);
            var usable = (board is null ? trims.Usable(type.Offer!) : trims.Usable(board)) ?? default;
            List<Rect> lost = [.. (board?.Defects ?? []).Select(defect => defect.Area), .. Trims.Outside(type.Size, usable)];
            var cutter = new BoardCutter(problem.Shop, lost) { Class = type.Class };
            cutter.Cut(pattern.Division?.Tree ?? type.Tree(problem.Shop.Kerf), pattern.Areas, names);
            sawn.Add(new SawnBoard(pattern, names, cutter) { Stock = board, Copy = copy, Lost = lost });
        }

        return sawn;
    }

    private static (Board? Board, int Copy) StockCopy(BoardType type, int nth)
    {
        foreach (var board in type.Boards)
        {
            if (nth <= board.Quantity)
            {
                return (board, nth);
            }

            nth -= board.Quantity;
        }

        return (null, nth);
    }
}
