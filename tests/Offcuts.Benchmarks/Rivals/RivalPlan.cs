using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Writes boards cut by a rival as a plan. Rivals know no bound but nothing.</summary>
internal static class RivalPlan
{
    public static Plan Write(PlanningProblem problem, IReadOnlyList<SawnBoard> sawn, TimeSpan budget, TimeSpan elapsed)
    {
        var copies = new Dictionary<string, int>(StringComparer.Ordinal);
        var boards = sawn.Select((board, index) => board.Write(index + 1, copies[board.Source.Supply] = copies.GetValueOrDefault(board.Source.Supply) + 1)).ToList();
        var purchases = sawn.Where(board => board.Source.Offer is not null).GroupBy(board => board.Source.Offer!)
            .Select(group => new Purchase(group.Key, group.Count())).ToList();
        var cost = new Money(purchases.Sum(purchase => purchase.Cost.MinorUnits));
        return new Plan
        {
            Status = cost == Money.Zero ? PlanStatus.Proved : PlanStatus.Feasible,
            Boards = boards,
            GlueUps = GlueUps(problem, boards),
            Purchases = purchases,
            WoodCost = cost,
            ItemCost = problem.Design.ItemCost,
            WoodBound = Money.Zero,
            WorthConsumed = new Money(sawn.Where(board => board.Source.Board is not null).Sum(board => Worth.OfBoard(
                board.Source.Board!, problem.Rates.Of(board.Source.Species), problem.Shop.KeptOf(board.Source.Species), problem.Today).MinorUnits)),
            WorthReturned = new Money(boards.Sum(board => board.Pieces.OfType<LeftoverPiece>().Sum(piece => Worth.Of(
                new Dimensions(board.Size.Thickness, piece.At.Width, piece.At.Length), problem.Rates.Of(board.Species), problem.Shop.KeptOf(board.Species)).MinorUnits))),
            Run = new PlanRun(0, budget, elapsed, elapsed, true, "rival"),
        };
    }

    private static List<GlueUp> GlueUps(PlanningProblem problem, List<BoardCut> boards)
    {
        var needed = problem.Design.Panels.ToDictionary(panel => panel.Name, panel => Milling.SubPanels(problem.Shop, panel).Width, StringComparer.Ordinal);
        return [.. boards.SelectMany(board => board.Pieces.OfType<StripPiece>().Select(strip => (Board: board, Strip: strip)))
            .GroupBy(entry => (entry.Strip.Panel, entry.Strip.Copy))
            .Select(panel => new GlueUp(panel.Key.Panel, panel.Key.Copy, panel.First().Board.Species, [.. panel
                .GroupBy(entry => entry.Strip.SubPanel).OrderBy(sub => sub.Key)
                .Select(sub => new SubPanel(sub.Key, needed[panel.Key.Panel], [.. sub.OrderBy(entry => entry.Strip.Order)
                    .Select(entry => new StripPlace(entry.Strip.Order, entry.Board.Number, entry.Strip.NetWidth))]))]))];
    }
}
