using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Layout;

/// <summary>Writes a solution out as a plan.</summary>
internal static class PlanWriter
{
    /// <summary>The plan made of the solutions of all components, which share no board.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="solved">The components.</param>
    /// <param name="missing">What cannot be had.</param>
    /// <param name="bound">A lower bound on the money, in minor units.</param>
    /// <param name="run">How it was found.</param>
    /// <param name="worthBound">A lower bound on the worth that is used up for the plan's money, in minor units; null if none is known.</param>
    public static Plan Write(
        PlanningProblem problem, IReadOnlyList<(PlanningModel Model, Solution Solution)> solved, IReadOnlyList<MissingPart> missing, long bound, PlanRun run,
        long? worthBound = null)
    {
        var sawn = Sawing.Of(problem, solved);
        new ExtraPieces(problem, sawn, missing).Cut();
        Growth.Use(problem, sawn);
        var boards = Boards(problem, sawn);
        var purchases = boards.Where(entry => entry.Offer is not null).GroupBy(entry => entry.Offer!)
            .Select(group => new Purchase(group.Key, group.Count())).ToList();
        var cost = new Money(purchases.Sum(purchase => purchase.Cost.MinorUnits));
        var cuts = boards.Select(entry => entry.Cut).ToList();
        var lower = new Money(Math.Min(bound, cost.MinorUnits));
        var (consumed, returned) = (Consumed(problem, cuts), new Money(cuts.Sum(cut => Returned(problem, cut))));
        return new Plan
        {
            Status = missing.Count > 0 ? PlanStatus.Incomplete : lower == cost ? PlanStatus.Proved : PlanStatus.Feasible,
            Boards = cuts,
            GlueUps = [.. solved.SelectMany(each => GlueUps(each.Model, cuts))],
            Laminations = Laminations(cuts),
            Purchases = purchases,
            Missing = missing,
            Counts = PartCounts.Of(problem, cuts, missing),
            Warnings = Explaining.Warnings.Of(problem, cuts),
            WoodCost = cost,
            ItemCost = problem.Design.ItemCost,
            WoodBound = lower,
            WorthConsumed = consumed,
            WorthReturned = returned,
            WorthBound = worthBound is { } least ? new Money(Math.Min(least, (consumed - returned).MinorUnits)) : null,
            Run = run,
        };
    }

    private static List<(BoardCut Cut, OfferSize? Offer)> Boards(PlanningProblem problem, List<SawnBoard> sawn)
    {
        var conditions = new Conditions(problem);
        var bought = new Dictionary<string, int>(StringComparer.Ordinal);
        var result = new List<(BoardCut, OfferSize?)>();
        foreach (var board in sawn)
        {
            var type = board.Type;
            var copy = board.Copy;
            if (type.Offer is { } offer)
            {
                copy = bought[offer.Offer.Id] = bought.GetValueOrDefault(offer.Offer.Id) + 1;
            }

            var (pieces, cuts) = board.Laid();
            result.Add((new BoardCut
            {
                Number = result.Count + 1,
                BoardId = board.Stock?.Id,
                Copy = copy,
                OfferId = type.Offer?.Offer.Id,
                Kind = type.Class.Kind,
                Species = type.Class.Species,
                Surface = type.Class.Surface,
                Size = type.Size,
                Defects = board.Defects,
                FirstCut = board.FirstCut,
                Pieces = conditions.Of(pieces, type.Class, type.Size, board.Stock?.Ends ?? default),
                Cuts = cuts,
            }, type.Offer));
        }

        return result;
    }

    private static List<GlueUp> GlueUps(PlanningModel model, List<BoardCut> boards)
    {
        var strips = boards.SelectMany(board => board.Pieces.OfType<StripPiece>().Select(strip => (Board: board, Strip: strip))).ToList();
        return [.. model.Rows.OfType<StripRow>().GroupBy(row => (row.Name, row.Copy)).Select(panel =>
        {
            var places = panel.Select(row => strips
                .Where(entry => entry.Strip.Panel == row.Name && entry.Strip.Copy == row.Copy && entry.Strip.SubPanel == row.SubPanel)
                .OrderBy(entry => entry.Strip.Order)
                .Select(entry => new StripPlace(entry.Strip.Order, entry.Board.Number, entry.Strip.NetWidth)).ToList()).ToList();
            var widths = new SplitPanel([.. panel]).Widths([.. places.Select(each => each.Sum(place => place.NetWidth.Ticks))]);
            return new GlueUp(
                panel.Key.Name, panel.Key.Copy,
                strips.Where(entry => entry.Strip.Panel == panel.Key.Name && entry.Strip.Copy == panel.Key.Copy)
                    .Select(entry => entry.Board.Species).FirstOrDefault(panel.First().Species[0]),
                [.. panel.Select((row, at) => new SubPanel(row.SubPanel, Length.FromTicks(widths[at]), places[at]))]);
        })];
    }

    private static List<Lamination> Laminations(List<BoardCut> boards) =>
    [
        .. from board in boards
           from piece in board.Pieces.OfType<PartPiece>()
           where piece.Recipe.Layers > 1
           from copy in piece.Copies
           group (Board: board, Place: new LayerPlace(copy.Layer, board.Number)) by (piece.Part, copy.Copy) into layers
           orderby layers.Key.Part, layers.Key.Copy
           select new Lamination(
               layers.Key.Part, layers.Key.Copy, layers.First().Board.Species, [.. layers.Select(layer => layer.Place).OrderBy(place => place.Layer)]),
    ];

    /// <summary>Worth of the shop's own boards that are cut.</summary>
    public static Money Consumed(PlanningProblem problem, IReadOnlyList<BoardCut> cuts)
    {
        var stock = problem.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        return new Money(cuts.Where(cut => cut.BoardId is not null).Sum(cut =>
            Worth.OfBoard(stock[cut.BoardId!], problem.Rates.Of(cut.Species), problem.Shop.KeptOf(cut.Species), problem.Today).MinorUnits));
    }

    /// <summary>Worth of what goes back to the rack of a board, in minor units.</summary>
    public static long Returned(PlanningProblem problem, BoardCut cut) => cut.Pieces.OfType<LeftoverPiece>().Sum(piece => Worth.OfKept(
        new Dimensions(cut.Size.Thickness, piece.At.Width, piece.At.Length), problem.Rates.Of(cut.Species)).MinorUnits);
}
