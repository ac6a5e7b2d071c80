using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>Rule 1: who may serve what. The machines' limits are on the blank's own width, turned or not.</summary>
internal static class Serving
{
    public static void Check(
        AuditScope scope, SourcedCut cut, Piece piece, Asked asked, Length blankWidth)
    {
        var warping = Warping.Of(cut);
        var warp = warping.Face(piece.At.Length, piece.At.Width);
        var board = cut.Board;
        var shop = scope.Problem.Shop;
        scope.Findings.Require(
            asked.Species.Contains(board.Species), AuditRule.Species, $"Board {board.Number}: {asked.Name} does not accept {board.Species}.");
        scope.Findings.Require(
            cut.Appearance is not { } looks || looks <= asked.Appearance,
            AuditRule.Appearance, $"Board {board.Number}: {asked.Name} asks for {asked.Appearance}, the board is {cut.Appearance}.");
        scope.Findings.Require(
            Milling.SuitsThickness(shop, board.Kind, board.Surface, board.Size.Thickness, asked.Thickness, asked.MostThickness, warp),
            AuditRule.Thickness, $"Board {board.Number}: {asked.Name} of {asked.Thickness} cannot be milled from {board.Surface} {board.Kind} {board.Size.Thickness} thick that is out of flat by {warp} there.");
        scope.Findings.Require(
            Milling.WidestBlank(shop, board.Kind, board.Surface, board.Size.Thickness, asked.Thickness, asked.MostThickness, warp) is not { } widest || blankWidth <= widest,
            AuditRule.MachineWidth, $"Board {board.Number}: the blank of {asked.Name}, {blankWidth} wide, is too wide for the machines.");
        CheckLoss(scope, cut, piece, Milling.IsUsedAsItIs(board.Kind, board.Surface, board.Size.Thickness, asked.Thickness, asked.MostThickness) ? Length.Zero : warp, warping.Edge(piece.At.Length));
    }

    private static void CheckLoss(AuditScope scope, SourcedCut cut, Piece piece, Length thickness, Length width)
    {
        var said = piece.Loss ?? new Loss(Length.Zero, Length.Zero);
        scope.Findings.Require(
            said.Thickness == thickness && said.Width == width,
            AuditRule.Loss, $"Board {cut.Board.Number}: the piece at {piece.At} loses {thickness} of thickness and {width} of width to warp, not {said.Thickness} and {said.Width}.");
    }
}

/// <summary>What a part or a panel asks of its wood.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Species">The species accepted.</param>
/// <param name="Appearance">The least appearance accepted.</param>
/// <param name="Thickness">The least finished thickness.</param>
/// <param name="MostThickness">The largest finished thickness that will do.</param>
internal sealed record Asked(string Name, IReadOnlyList<string> Species, Appearance Appearance, Length Thickness, Length MostThickness)
{
    public Asked(Part part)
        : this(part.Name, part.Species, part.Appearance, part.Finished.Thickness, part.MostThickness)
    {
    }

    /// <summary>The same for each of equally thick layers, in which there is no tolerance.</summary>
    public Asked InLayers(int layers)
    {
        var each = Length.FromTicks(((Thickness.Ticks - 1) / layers) + 1);
        return this with { Thickness = each, MostThickness = each };
    }

    public Asked(Panel panel)
        : this(panel.Name, panel.Species, panel.Appearance, panel.Finished.Thickness, panel.Finished.Thickness)
    {
    }
}
