using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>What cannot be made, what to mind in this plan, and what to mind at any saw.</summary>
internal static class CautionSection
{
    /// <summary>The parts that the plan does not make, with the reasons; null if it makes all.</summary>
    public static XElement? Missing(PlanDocument document) => document.Plan.Missing.Count == 0 ? null : Markup.Html(
        "section", "missing", Markup.Html("h2", null, "Missing"),
        Markup.Html("ul", null, document.Plan.Missing.Select(missing => Markup.Html("li", null, PlanText.Of(missing, document.Problem)))));

    /// <summary>The plan's warnings and the usual cautions.</summary>
    public static XElement Mind(PlanDocument document) => Markup.Html(
        "section", "mind", Markup.Html("h2", null, "Before you cut"),
        Markup.Html("ul", null, PlanText.Of(document.Plan.Warnings, document.Unit).Select(warning =>
            Markup.Html("li", "warning", Markup.Html("strong", null, warning)))
            .Concat(Usual(document).Select(caution => Markup.Html("li", null, caution)))));

    private static IEnumerable<string> Usual(PlanDocument document)
    {
        yield return $"The plan counts on a saw cut {LengthText.Format(document.Problem.Shop.Kerf, document.Unit)} wide and on the sizes in the rack's records: "
            + "check the blade and measure each board before its first cut. Left and lower are as in the picture: mark them on the board.";
        yield return "Short and narrow pieces are the dangerous ones at saw, jointer and planer. Use sled, push blocks and hold-downs, or mill them as one longer piece first. "
            + "The machine's manual decides what is safe, not this sheet.";
        yield return "Reclaimed wood may hide nails, screws and grit: go over it with a metal detector. Old paint may contain lead: do not cut, sand or plane it before it is tested, and follow local rules.";
        yield return "This sheet says nothing about strength. Where wood bears load (seats, shelves, beds, steps, anything overhead), local codes and licensed practice decide.";
    }
}
