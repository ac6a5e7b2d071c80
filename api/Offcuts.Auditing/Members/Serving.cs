using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>Rule 1: who may serve what. The machines' limits are on the blank's own width, turned or not.</summary>
internal static class Serving
{
    public static void Check(
        AuditScope scope, SourcedCut cut, Piece piece, string name, IReadOnlyList<string> species, Appearance appearance, Length thickness, Length blankWidth)
    {
        var warping = Warping.Of(cut);
        var warp = warping.Face(piece.At.Length, piece.At.Width);
        var board = cut.Board;
        var shop = scope.Problem.Shop;
        scope.Findings.Require(
            species.Contains(board.Species), AuditRule.Species, $"Board {board.Number}: {name} does not accept {board.Species}.");
        scope.Findings.Require(
            cut.Appearance is not { } looks || looks <= appearance,
            AuditRule.Appearance, $"Board {board.Number}: {name} asks for {appearance}, the board is {cut.Appearance}.");
        scope.Findings.Require(
            Milling.SuitsThickness(shop, board.Kind, board.Surface, board.Size.Thickness, thickness, warp),
            AuditRule.Thickness, $"Board {board.Number}: {name} of {thickness} cannot be milled from {board.Surface} {board.Kind} {board.Size.Thickness} thick that is out of flat by {warp} there.");
        scope.Findings.Require(
            Milling.WidestBlank(shop, board.Kind, board.Surface, board.Size.Thickness, thickness, warp) is not { } widest || blankWidth <= widest,
            AuditRule.MachineWidth, $"Board {board.Number}: the blank of {name}, {blankWidth} wide, is too wide for the machines.");
        CheckLoss(scope, cut, piece, Milling.IsUsedAsItIs(board.Kind, board.Surface, board.Size.Thickness, thickness) ? Length.Zero : warp, warping.Edge(piece.At.Length));
    }

    private static void CheckLoss(AuditScope scope, SourcedCut cut, Piece piece, Length thickness, Length width)
    {
        var said = piece.Loss ?? new Loss(Length.Zero, Length.Zero);
        scope.Findings.Require(
            said.Thickness == thickness && said.Width == width,
            AuditRule.Loss, $"Board {cut.Board.Number}: the piece at {piece.At} loses {thickness} of thickness and {width} of width to warp, not {said.Thickness} and {said.Width}.");
    }
}
