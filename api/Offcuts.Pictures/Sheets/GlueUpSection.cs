using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>How strips become panels.</summary>
internal static class GlueUpSection
{
    public static XElement? Of(PlanDocument document) => document.Plan.GlueUps.Count + document.Plan.Laminations.Count == 0 ? null : Markup.Html(
        "section", null, Markup.Html("h2", null, "Glue-ups"),
        document.Plan.GlueUps.Count == 0 ? null : Markup.Html(
            "p", null, "Lay the strips side by side in this order and joint the edges that meet. Sub-panels are surfaced one by one before they are glued to each other."),
        document.Plan.GlueUps.Select(glueUp => Panel(document, glueUp)), LayerTable.Of(document));

    private static XElement Panel(PlanDocument document, GlueUp glueUp)
    {
        var panel = document.Problem.Design.Panels.FirstOrDefault(panel => panel.Name == glueUp.Panel);
        var name = panel?.Quantity > 1 ? FormattableString.Invariant($"{glueUp.Panel} #{glueUp.Copy}") : glueUp.Panel;
        var finished = panel is null ? "" : $", finished {SizeText.Format(panel.Finished, document.Unit)}";
        return Markup.Html(
            "div", "glue-up",
            Markup.Html("h3", null, $"{name}: {document.Species(glueUp.Species)}{finished}"),
            GlueUpText.SubPanels([.. glueUp.SubPanels.Select(subPanel => subPanel.NeededWidth)], document.Unit) is { } widths
                ? Markup.Html("p", null, $"{widths}.") : null,
            glueUp.SubPanels.Select(subPanel => SubPanel(document, glueUp, subPanel)));
    }

    private static XElement SubPanel(PlanDocument document, GlueUp glueUp, SubPanel subPanel)
    {
        var title = glueUp.SubPanels.Count == 1 ? "One panel" : FormattableString.Invariant($"Sub-panel {subPanel.Number} of {glueUp.SubPanels.Count}");
        return Markup.Html(
            "div", "sub-panel",
            Markup.Html("p", null, Markup.Html("strong", null, title),
                $": {GlueUpText.Width(subPanel, document.Unit)}."),
            Table.Of(["", "Strip", "From board", "Piece", "Counts as wide"],
                subPanel.Strips.OrderBy(strip => strip.Order).Select(strip => Strip(document, glueUp, subPanel, strip))));
    }

    private static object?[] Strip(PlanDocument document, GlueUp glueUp, SubPanel subPanel, StripPlace strip)
    {
        var board = document.Board(strip.BoardNumber);
        var piece = KeyedPiece.Of(document, board).FirstOrDefault(piece => piece.Piece is StripPiece found
            && (found.Panel, found.Copy, found.SubPanel, found.Order) == (glueUp.Panel, glueUp.Copy, subPanel.Number, strip.Order));
        return
        [
            Table.Tick("laid"), FormattableString.Invariant($"{strip.Order}"),
            FormattableString.Invariant($"{strip.BoardNumber} ({Words.Name(document, board)})"), piece?.Key ?? "",
            LengthText.Format(strip.NetWidth, document.Unit),
        ];
    }
}
