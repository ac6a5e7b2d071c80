namespace Offcuts.Pictures;

/// <summary>The cut sheet: a plan as one self-contained HTML page to print and take to the saw.</summary>
public static class CutSheet
{
    /// <summary>Writes the page.</summary>
    /// <param name="document">The plan and what it was made from.</param>
    public static string Html(PlanDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var title = $"{document.Problem.Design.Name}: cut sheet";
        var page = Markup.Html(
            "html", null,
            Markup.Html("head", null, Markup.Html("meta", null, new System.Xml.Linq.XAttribute("charset", "utf-8")), Markup.Html("title", null, title)),
            Markup.Html("body", null, Markup.Html("h1", null, title), document.Plan.Boards.OrderBy(board => board.Number).Select(board => Diagram.Element(document, board))));
        return $"<!DOCTYPE html>\n{Markup.Write(page)}";
    }
}
