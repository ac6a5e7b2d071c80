using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Layout;

/// <summary>Writes a solution out as a plan.</summary>
internal static class PlanWriter
{
    /// <summary>The plan made of the solutions of all components, which share no board.</summary>
    public static Plan Write(
        PlanningProblem problem, IReadOnlyList<(PlanningModel Model, Solution Solution)> solved, IReadOnlyList<MissingPart> missing, long bound, PlanRun run)
    {
        var boards = Boards(problem, solved);
        var purchases = boards.Where(entry => entry.Offer is not null).GroupBy(entry => entry.Offer!)
            .Select(group => new Purchase(group.Key, group.Count())).ToList();
        var cost = new Money(purchases.Sum(purchase => purchase.Cost.MinorUnits));
        var cuts = boards.Select(entry => entry.Cut).ToList();
        var lower = new Money(Math.Min(bound, cost.MinorUnits));
        return new Plan
        {
            Status = missing.Count > 0 ? PlanStatus.Incomplete : lower == cost ? PlanStatus.Proved : PlanStatus.Feasible,
            Boards = cuts,
            GlueUps = [.. solved.SelectMany(each => GlueUps(each.Model, cuts))],
            Purchases = purchases,
            Missing = missing,
            Warnings = Explaining.Warnings.Of(problem, cuts),
            WoodCost = cost,
            ItemCost = new Money(problem.Design.Items.Sum(item => item.UnitPrice.MinorUnits * item.Quantity)),
            WoodBound = lower,
            WorthConsumed = Consumed(problem, cuts),
            WorthReturned = new Money(cuts.Sum(cut => Returned(problem, cut))),
            Run = run,
        };
    }

    private static List<(BoardCut Cut, OfferSize? Offer)> Boards(PlanningProblem problem, IReadOnlyList<(PlanningModel Model, Solution Solution)> solved)
    {
        var patterns = solved.SelectMany(each =>
        {
            var names = new PieceNames(each.Model);
            return Surplus.Remove(each.Model, each.Solution).Select(pattern => (Pattern: pattern, Names: names));
        });
        var taken = new Dictionary<BoardType, int>();
        var bought = new Dictionary<string, int>(StringComparer.Ordinal);
        var ordered = patterns
            .OrderBy(each => each.Pattern.Board.Class.Species, StringComparer.Ordinal).ThenBy(each => each.Pattern.Board.Size.Thickness)
            .ThenBy(each => each.Pattern.Money > 0).ThenByDescending(each => each.Pattern.Board.Along).ThenBy(each => each.Pattern.Board.Index)
            .ThenBy(each => each.Pattern.Key, StringComparer.Ordinal);
        var result = new List<(BoardCut, OfferSize?)>();
        var trims = new Trims(problem.Shop);
        var conditions = new Conditions(problem);
        foreach (var (pattern, names) in ordered)
        {
            var type = pattern.Board;
            var nth = taken[type] = taken.GetValueOrDefault(type) + 1;
            var (board, copy) = StockCopy(type, nth);
            if (type.Offer is { } offer)
            {
                copy = bought[offer.Offer.Id] = bought.GetValueOrDefault(offer.Offer.Id) + 1;
            }

            var defects = board?.Defects ?? [];
            var usable = (board is null ? trims.Usable(type.Offer!) : trims.Usable(board)) ?? default;
            List<Rect> lost = [.. defects.Select(defect => defect.Area), .. Trims.Outside(type.Size, usable)];
            var cutter = new BoardCutter(problem.Shop, lost) { Thickness = type.Size.Thickness };
            cutter.Cut(pattern.Division?.Tree ?? type.Tree(problem.Shop.Kerf), pattern.Areas, names);
            result.Add((new BoardCut
            {
                Number = result.Count + 1,
                BoardId = board?.Id,
                Copy = copy,
                OfferId = type.Offer?.Offer.Id,
                Kind = type.Class.Kind,
                Species = type.Class.Species,
                Surface = type.Class.Surface,
                Size = type.Size,
                Defects = defects,
                FirstCut = pattern.Division is not null && cutter.Cuts.Count > 0 ? cutter.Cuts[0].Direction
                    : pattern.Areas[0].RipFirst ? FirstCut.Rip : FirstCut.Crosscut,
                Pieces = conditions.Of(cutter.Pieces, type.Class, type.Size, board?.Ends ?? default),
                Cuts = cutter.Cuts,
            }, type.Offer));
        }

        return result;
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

    private static List<GlueUp> GlueUps(PlanningModel model, List<BoardCut> boards)
    {
        var strips = boards.SelectMany(board => board.Pieces.OfType<StripPiece>().Select(strip => (Board: board, Strip: strip))).ToList();
        return [.. model.Rows.OfType<StripRow>().GroupBy(row => (row.Name, row.Copy)).Select(panel => new GlueUp(
            panel.Key.Name, panel.Key.Copy,
            strips.Where(entry => entry.Strip.Panel == panel.Key.Name && entry.Strip.Copy == panel.Key.Copy)
                .Select(entry => entry.Board.Species).FirstOrDefault(panel.First().Species[0]),
            [.. panel.Select(row => new SubPanel(row.SubPanel, row.Width, [.. strips
                .Where(entry => entry.Strip.Panel == row.Name && entry.Strip.Copy == row.Copy && entry.Strip.SubPanel == row.SubPanel)
                .OrderBy(entry => entry.Strip.Order)
                .Select(entry => new StripPlace(entry.Strip.Order, entry.Board.Number, entry.Strip.NetWidth))]))]))];
    }

    private static Money Consumed(PlanningProblem problem, List<BoardCut> cuts)
    {
        var stock = problem.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        return new Money(cuts.Where(cut => cut.BoardId is not null).Sum(cut =>
            Worth.OfBoard(stock[cut.BoardId!], problem.Rates.Of(cut.Species), problem.Shop.Keep, problem.Today).MinorUnits));
    }

    private static long Returned(PlanningProblem problem, BoardCut cut) => cut.Pieces.OfType<LeftoverPiece>().Sum(piece => Worth.Of(
        new Dimensions(cut.Size.Thickness, piece.At.Width, piece.At.Length), problem.Rates.Of(cut.Species), problem.Shop.Keep).MinorUnits);
}
