using System.Xml.Linq;
using Offcuts.Pictures.Drawing;
using Offcuts.Pictures.Sheets;

namespace Offcuts.Pictures;

/// <summary>The cut sheet: a plan as one self-contained HTML page to print and take to the saw.</summary>
public static class CutSheet
{
    /// <summary>Writes the page. It is well-formed XML too, loads nothing and runs no script.</summary>
    /// <param name="document">The plan and what it was made from.</param>
    public static string Html(PlanDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var body = Body(document);
        Markup.KeepNumbersWhole(body);
        return $"<!DOCTYPE html>\n{Markup.Write(new XElement("html", new XAttribute("lang", "en"), Head(document), body))}\n";
    }

    private static XElement Head(PlanDocument document) => Markup.Html(
        "head", null,
        new XElement("meta", new XAttribute("charset", "utf-8")),
        new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
        new XElement("title", $"{document.Problem.Design.Name}: cut sheet"),
        new XElement("style", SheetStyle.Css));

    private static XElement Body(PlanDocument document) => Markup.Html(
        "body", null,
        SummarySection.Of(document),
        CautionSection.Missing(document),
        ChangesSection.Of(document),
        ShoppingSection.Of(document),
        RackSection.Of(document),
        CountSection.Of(document),
        CautionSection.Mind(document),
        Boards(document),
        GlueUpSection.Of(document),
        MovementSection.Of(document));

    private static XElement? Boards(PlanDocument document) => document.Plan.Boards.Count == 0 ? null : Markup.Html(
        "section", "boards", Markup.Html("h2", null, "Boards in cutting order"),
        Markup.Html("p", "aside", Legend.Text),
        document.Plan.Boards.OrderBy(board => board.Number).Select(board => BoardSection.Of(document, board)));
}
