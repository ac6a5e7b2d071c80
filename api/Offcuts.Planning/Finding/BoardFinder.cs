using Offcuts.Domain;
using Offcuts.Planning.Explaining;
using Offcuts.Planning.Layout;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Finding;

/// <summary>Finds the boards that give a piece, by the rules by which plans are made.</summary>
public static class BoardFinder
{
    /// <summary>So many boards that come near are told where none gives a piece.</summary>
    private const int MostNear = 5;

    /// <summary>
    /// The boards of which each gives at least one piece: first those that give all that are wanted, in the order in which a plan would take them,
    /// so that the least worth is spent for a piece and what is hard to get at comes later.
    /// </summary>
    /// <param name="problem">The stock, the shop, and a design of the piece alone; offers are not looked at.</param>
    /// <param name="most">The most boards to list.</param>
    public static BoardSearch Find(PlanningProblem problem, int most)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var part = problem.Design.Parts.Single();
        var counted = problem with { Stock = CountedStock.Of(problem), Offers = [] };
        var found = new PieceCuts(counted, part, part.Quantity).All()
            .SelectMany(cuts => cuts.Boards.Select(board => (Cuts: cuts, Board: board)))
            .OrderBy(each => (long)each.Cuts.Gives * each.Board.Quantity < part.Quantity).ThenBy(each => each.Cuts.Pattern.Worth / each.Cuts.Cut)
            .ThenBy(each => each.Board.LoggedAt).ThenBy(each => each.Board.Id, StringComparer.Ordinal).ToList();
        var original = problem.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        var leftovers = new Dictionary<PieceCuts.Cuts, IReadOnlyList<Dimensions>>();
        return new BoardSearch(
            [.. found.Take(most).Select(each => Fit(each.Cuts, each.Board, original[each.Board.Id]))],
            found.Count, found.Sum(each => (long)each.Cuts.Gives * each.Board.Quantity),
            found.Count > 0 ? [] : new NearBoards(counted).To(part, MostNear));

        BoardFit Fit(PieceCuts.Cuts cuts, Board sure, Board board)
        {
            if (!leftovers.TryGetValue(cuts, out var left))
            {
                leftovers.Add(cuts, left = Leftovers(counted, cuts));
            }

            var rate = problem.Rates.Of(board.Species);
            var kept = problem.Shop.KeptOf(sure.Species);
            var returned = left.Sum(size => Worth.Of(size, rate, kept).MinorUnits);
            var worth = Worth.OfBoard(sure, rate, kept, problem.Today).MinorUnits;
            return new BoardFit(board, problem.ReachOf(board), cuts.Gives, cuts.Cut, new Money(worth - returned), left);
        }
    }

    private static IReadOnlyList<Dimensions> Leftovers(PlanningProblem problem, PieceCuts.Cuts cuts)
    {
        var sawn = Sawing.Of(problem, [(cuts.Model, new Solution(cuts.Model, [(cuts.Pattern, 1)]))]).Single();
        var thickness = cuts.Pattern.Board.Size.Thickness;
        return [.. sawn.Laid().Pieces.OfType<LeftoverPiece>().Select(piece => new Dimensions(thickness, piece.At.Width, piece.At.Length))
            .OrderByDescending(size => (double)size.Width.Ticks * size.Length.Ticks)];
    }
}
