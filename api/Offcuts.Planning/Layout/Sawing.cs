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
            .ThenBy(each => each.Pattern.Key, StringComparer.Ordinal).ToList();
        var trims = new Trims(problem.Shop);
        var places = new StockPlaces([.. ordered.Select(each => each.Pattern)]);
        var sawn = new List<SawnBoard>();
        foreach (var (pattern, names) in ordered)
        {
            var type = pattern.Board;
            var (board, copy) = places.Next(pattern);
            var usable = (board is null ? trims.Usable(type.Offer!) : trims.Usable(board)) ?? default;
            List<Rect> lost = [.. (board?.Defects ?? []).Select(defect => defect.Area), .. Trims.Outside(type.Size, usable)];
            var cutter = new BoardCutter(problem.Shop, lost) { Class = type.Class, Kept = type.Profile.Kept };
            cutter.Cut(pattern.Division?.Tree ?? type.Tree(problem.Shop.Kerf), pattern.Areas, names);
            sawn.Add(new SawnBoard(pattern, names, cutter) { Stock = board, Copy = copy, Lost = lost });
        }

        return sawn;
    }
}
