using Offcuts.Domain;

namespace Offcuts.Planning.Explaining;

/// <summary>What a maker should mind about a plan.</summary>
internal static class Warnings
{
    public static List<PlanWarning> Of(PlanningProblem problem, IReadOnlyList<BoardCut> boards)
    {
        var shop = problem.Shop;
        var thickness = problem.Design.Parts.Select(part => (part.Name, Least: part.Finished.Thickness, Most: part.MostThickness))
            .Concat(problem.Design.Panels.Select(panel => (panel.Name, Least: panel.Finished.Thickness, Most: panel.Finished.Thickness)))
            .ToDictionary(member => member.Name, member => (member.Least, member.Most), StringComparer.Ordinal);
        var warnings = new List<PlanWarning>();
        foreach (var board in boards)
        {
            foreach (var (name, length, passesJointer) in shop.ShortBlanks == ShortBlanks.Allow ? [] : Milled(board, thickness, shop.FlatEnough))
            {
                if (passesJointer && length < shop.ShortestAtJointer)
                {
                    Add(new PlanWarning(WarningKind.ShortForJointer, name, length, shop.ShortestAtJointer));
                }

                if (length < shop.ShortestAtPlaner)
                {
                    Add(new PlanWarning(WarningKind.ShortForPlaner, name, length, shop.ShortestAtPlaner));
                }
            }

            foreach (var part in board.Pieces.OfType<PartPiece>())
            {
                if (part.Recipe.Slices > 1)
                {
                    Add(new PlanWarning(WarningKind.Resawn, part.Part));
                }

                if (part.Recipe.Layers > 1)
                {
                    Add(new PlanWarning(WarningKind.Laminated, part.Part));
                }
            }

            if (board.BoardId is { } id && problem.Stock.Any(stock => stock.Id == id && stock.Estimates.Any))
            {
                Add(new PlanWarning(WarningKind.Estimated, id));
            }

            if (board.Defects.Count > 0)
            {
                Add(new PlanWarning(WarningKind.Defects, board.BoardId ?? ""));
            }
        }

        foreach (var panel in problem.Design.Panels.Where(panel => panel.Finished.Width >= shop.WidePanel))
        {
            Add(new PlanWarning(WarningKind.WidePanel, panel.Name, panel.Finished.Width));
            foreach (var kind in GlueUps(panel.Name).SelectMany(sources => PanelMoisture.Warnings(sources, problem.Today, shop.ReadingDays)))
            {
                Add(new PlanWarning(kind, panel.Name));
            }
        }

        return warnings;

        // The boards of each panel of a name.
        IEnumerable<List<(string?, MoistureReading?)>> GlueUps(string panel) => boards
            .SelectMany(board => board.Pieces.OfType<StripPiece>().Where(strip => strip.Panel == panel).Select(strip => (strip.Copy, Board: board)))
            .GroupBy(strip => strip.Copy, (_, strips) => strips.Select(strip => Source(strip.Board)).ToList());

        (string?, MoistureReading?) Source(BoardCut board) => problem.Stock.FirstOrDefault(stock => stock.Id == board.BoardId) is { } stock
            ? (stock.Batch, stock.Moisture)
            : (board.OfferId, null);

        void Add(PlanWarning warning)
        {
            if (!warnings.Exists(known => known.Kind == warning.Kind && known.Subject == warning.Subject))
            {
                warnings.Add(warning);
            }
        }
    }

    /// <summary>Blanks that go through the planer, perhaps over the jointer first, with their length along the grain.</summary>
    private static IEnumerable<(string Name, Length Length, bool PassesJointer)> Milled(
        BoardCut board, Dictionary<string, (Length Least, Length Most)> thickness, Length flatEnough)
    {
        foreach (var piece in board.Pieces)
        {
            var name = piece is PartPiece part ? part.Part : piece is StripPiece strip ? strip.Panel : null;
            var (least, most) = name is null ? default : thickness[name];
            if (piece is PartPiece { Recipe: { Layers: > 1 } recipe })
            {
                least = most = recipe.PieceThickness(least);
            }

            if (name is not null && board.Kind == BoardKind.Solid
                && (board.Surface != Surface.Surfaced || board.Size.Thickness < least || board.Size.Thickness > most))
            {
                yield return (name, piece.At.Length, board.Surface != Surface.Surfaced || piece.Loss?.Thickness > flatEnough);
            }
        }
    }
}
