using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 3, the single strip: of solid wood, as long as the panel and the length allowance, its net width within the limits and exactly the
/// sawn width less the width allowance and its crook; machines take the sawn width.
/// </summary>
internal static class Strips
{
    public static void Check(AuditScope scope, SourcedCut cut, StripPiece piece)
    {
        if (!scope.Panels.TryGetValue(piece.Panel, out var panel))
        {
            scope.Findings.Add(AuditRule.Demand, $"Board {cut.Board.Number}: the design has no panel {piece.Panel}.");
            return;
        }

        var shop = scope.Problem.Shop;
        var allowances = Milling.Allowances(shop, cut.Board.Kind, cut.Board.Surface);
        var length = LengthOf(shop, panel, cut.Board.Kind, cut.Board.Surface, cut.Board.Size.Thickness, Warping.Of(cut).IsFlat);
        var narrowest = panel.NarrowestStrip ?? shop.NarrowestStrip;
        var widest = panel.WidestStrip ?? shop.WidestStrip;
        scope.Findings.Require(
            cut.Board.Kind == BoardKind.Solid, AuditRule.Thickness, $"Board {cut.Board.Number}: panel {panel.Name} is glued from solid wood, not from a sheet.");
        scope.Findings.Require(
            piece.At.Length == length, AuditRule.StripSize, $"Board {cut.Board.Number}: a strip of {panel.Name} must be {length} long, it is {piece.At.Length}.");
        scope.Findings.Require(
            piece.At.Width == piece.NetWidth + allowances.Width + Warping.Of(cut).Edge(length),
            AuditRule.StripSize, $"Board {cut.Board.Number}: a strip of {panel.Name} sawn {piece.At.Width} wide cannot count for {piece.NetWidth}.");
        scope.Findings.Require(
            piece.NetWidth >= narrowest && piece.NetWidth <= widest,
            AuditRule.StripSize, $"Board {cut.Board.Number}: a strip of {panel.Name} counts for {piece.NetWidth}, the limits are {narrowest} and {widest}.");
        Serving.Check(scope, cut, piece, new Asked(panel), piece.At.Width);
    }

    /// <summary>Length of a panel's strips; where the shop refuses short blanks, at least what is safe at the machines that they must pass.</summary>
    internal static Length LengthOf(Shop shop, Panel panel, BoardKind kind, Surface surface, Length board, bool isFlat)
    {
        var length = panel.Finished.Length + Milling.Allowances(shop, kind, surface).Length;
        return shop.ShortBlanks != ShortBlanks.Refuse ? length
            : Length.Larger(length, Milling.ShortestBlank(shop, kind, surface, board, panel.Finished.Thickness, panel.Finished.Thickness, isFlat));
    }
}
