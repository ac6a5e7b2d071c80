using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Strips make up their panels, and what must be of one species is.</summary>
internal static class PanelChecks
{
    public static void Run(AuditSheet sheet)
    {
        var strips = sheet.Plan.Boards.SelectMany(board => board.Pieces.OfType<StripPiece>().Select(strip => (Board: board, Strip: strip))).ToList();
        foreach (var (board, strip) in strips)
        {
            if (sheet.PanelNamed(strip.Panel) is { } panel)
            {
                Strip(sheet, board, strip, panel);
            }
        }

        foreach (var glueUp in sheet.Plan.GlueUps)
        {
            Glue(sheet, glueUp, strips);
        }

        var listed = sheet.Plan.GlueUps.SelectMany(glueUp => glueUp.SubPanels).Sum(sub => sub.Strips.Count);
        sheet.Require(listed == strips.Count, AuditRule.GlueUp, $"{strips.Count} strips are cut, {listed} are glued up.");
        foreach (var panel in strips.GroupBy(entry => entry.Strip.Panel))
        {
            var species = panel.Select(entry => entry.Board.Species).Distinct().ToList();
            sheet.Require(species.Count == 1, AuditRule.OneSpecies, $"Panel {panel.Key} is made of {string.Join(" and ", species)}.");
        }

        Groups(sheet);
    }

    private static void Strip(AuditSheet sheet, BoardCut board, StripPiece strip, Panel panel)
    {
        var extra = Rules.AllowancesFor(sheet.Shop, board.Kind, board.Surface);
        var (narrowest, widest) = Rules.StripLimits(sheet.Shop, panel);
        sheet.Require(board.Kind == BoardKind.Solid, AuditRule.Strips, $"A strip for {strip.Panel} is cut from a sheet.");
        sheet.Require(
            strip.At.Length == panel.Finished.Length + extra.Length && strip.NetWidth == strip.At.Width - extra.Width,
            AuditRule.Strips, $"A strip for {strip.Panel} on board {board.Number} is not of the length asked or counts for a width that it has not.");
        sheet.Require(
            strip.NetWidth >= narrowest && strip.NetWidth <= widest, AuditRule.Strips,
            $"A strip for {strip.Panel} counts {strip.NetWidth}; its limits are {narrowest} and {widest}.");
    }

    private static void Glue(AuditSheet sheet, GlueUp glueUp, List<(BoardCut Board, StripPiece Strip)> strips)
    {
        if (sheet.PanelNamed(glueUp.Panel) is not { } panel)
        {
            sheet.Find(AuditRule.GlueUp, $"The design has no panel {glueUp.Panel}.");
            return;
        }

        var (count, width) = Rules.SubPanels(sheet.Shop, panel);
        var numbers = glueUp.SubPanels.Select(sub => sub.Number);
        sheet.Require(numbers.SequenceEqual(Enumerable.Range(1, count)), AuditRule.GlueUp, $"{glueUp.Panel} needs {count} sub-panels.");
        foreach (var sub in glueUp.SubPanels)
        {
            var cut = strips.Where(entry => entry.Strip.Panel == glueUp.Panel && entry.Strip.Copy == glueUp.Copy && entry.Strip.SubPanel == sub.Number)
                .OrderBy(entry => entry.Strip.Order).ToList();
            var places = cut.Select(entry => new StripPlace(entry.Strip.Order, entry.Board.Number, entry.Strip.NetWidth));
            var ordered = cut.Select(entry => entry.Strip.Order).SequenceEqual(Enumerable.Range(1, cut.Count));
            sheet.Require(
                ordered && places.SequenceEqual(sub.Strips) && cut.TrueForAll(entry => entry.Board.Species == glueUp.Species),
                AuditRule.GlueUp, $"Sub-panel {sub.Number} of {glueUp.Panel} {glueUp.Copy} does not list the strips that are cut for it.");
            var sum = cut.Aggregate(Length.Zero, (total, entry) => total + entry.Strip.NetWidth);
            sheet.Require(
                sub.NeededWidth == width && sum >= width, AuditRule.Strips,
                $"Sub-panel {sub.Number} of {glueUp.Panel} {glueUp.Copy} comes to {sum}; it needs {width}.");
        }
    }

    private static void Groups(AuditSheet sheet)
    {
        foreach (var group in sheet.Problem.Design.Groups.Where(group => group.OneSpecies))
        {
            var species = sheet.Plan.Boards.Where(board => board.Pieces.Any(piece => GroupOf(sheet, piece) == group.Name))
                .Select(board => board.Species).Distinct().ToList();
            sheet.Require(species.Count <= 1, AuditRule.OneSpecies, $"Group {group.Name} is made of {string.Join(" and ", species)}.");
        }
    }

    private static string? GroupOf(AuditSheet sheet, Piece piece) => piece switch
    {
        PartPiece part => sheet.PartNamed(part.Part)?.Group,
        StripPiece strip => sheet.PanelNamed(strip.Panel)?.Group,
        _ => null,
    };
}
