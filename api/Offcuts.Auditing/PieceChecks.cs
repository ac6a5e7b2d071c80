using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Each piece is what it should be for the part that it serves.</summary>
internal static class PieceChecks
{
    public static void Run(AuditSheet sheet)
    {
        foreach (var board in sheet.Plan.Boards)
        {
            foreach (var piece in board.Pieces)
            {
                Check(sheet, board, piece);
            }
        }
    }

    private static void Check(AuditSheet sheet, BoardCut board, Piece piece)
    {
        switch (piece)
        {
            case PartPiece made when sheet.PartNamed(made.Part) is { } part:
                Wood(sheet, board, made.Part, part.Species, part.Appearance, part.Finished.Thickness);
                Blank(sheet, board, made, part);
                break;
            case StripPiece strip when sheet.PanelNamed(strip.Panel) is { } panel:
                Wood(sheet, board, strip.Panel, panel.Species, panel.Appearance, panel.Finished.Thickness);
                Width(sheet, board, strip.Panel, panel.Finished.Thickness, strip.At.Width);
                break;
            case PartPiece or StripPiece:
                sheet.Find(AuditRule.Demand, $"Board {board.Number} has a piece for something that the design does not have.");
                break;
        }

        var clear = !board.Defects.Any(defect => defect.Area.Overlaps(piece.At));
        var kept = Worth.IsKept(new Dimensions(board.Size.Thickness, piece.At.Width, piece.At.Length), sheet.Shop.Keep);
        sheet.Require(clear || piece is WastePiece, AuditRule.Defect, $"A piece of board {board.Number} at {piece.At} lies over a defect.");
        sheet.Require(piece is not LeftoverPiece || kept, AuditRule.Leftover, $"The leftover of board {board.Number} at {piece.At} is too small to keep.");
        sheet.Require(
            piece is not WastePiece || !kept || !clear, AuditRule.Leftover, $"The waste of board {board.Number} at {piece.At} is large enough to keep.");
    }

    private static void Wood(AuditSheet sheet, BoardCut board, string name, IReadOnlyList<string> species, Appearance asked, Length finished)
    {
        sheet.Require(species.Contains(board.Species), AuditRule.Species, $"{name} does not accept the {board.Species} of board {board.Number}.");
        var looks = board.BoardId is not null
            ? sheet.Problem.Stock.FirstOrDefault(owned => owned.Id == board.BoardId)?.Appearance
            : sheet.Problem.Offers.FirstOrDefault(offer => offer.Id == board.OfferId)?.Appearance;
        sheet.Require(looks is null || looks <= asked, AuditRule.Appearance, $"Board {board.Number} does not look good enough for {name}.");
        sheet.Require(
            Rules.ThicknessSuits(sheet.Shop, board.Kind, board.Surface, board.Size.Thickness, finished), AuditRule.Thickness,
            $"{name} of {finished} cannot be milled from board {board.Number} of {board.Size.Thickness}.");
    }

    private static void Blank(AuditSheet sheet, BoardCut board, PartPiece made, Part part)
    {
        var extra = Rules.AllowancesFor(sheet.Shop, board.Kind, board.Surface);
        var (length, width) = (part.Finished.Length + extra.Length, part.Finished.Width + extra.Width);
        var (along, across) = made.Turned ? (width, length) : (length, width);
        sheet.Require(
            made.At.Length == along && made.At.Width == across, AuditRule.BlankSize,
            $"The blank for {made.Part} {made.Copy} on board {board.Number} is {made.At.Length} by {made.At.Width} instead of {along} by {across}.");
        sheet.Require(!made.Turned || part.Grain == Grain.Free, AuditRule.BlankSize, $"{made.Part} {made.Copy} is turned against its grain.");
        Width(sheet, board, made.Part, part.Finished.Thickness, width);
    }

    private static void Width(AuditSheet sheet, BoardCut board, string name, Length finished, Length width)
    {
        var widest = Rules.WidestBlank(sheet.Shop, board.Kind, board.Surface, board.Size.Thickness, finished);
        sheet.Require(widest is null || width <= widest, AuditRule.MachineWidth, $"The {width} wide blank for {name} on board {board.Number} is too wide for the machines.");
    }
}
