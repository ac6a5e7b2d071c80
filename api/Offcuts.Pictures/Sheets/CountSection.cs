using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>How many pieces there are where the design leaves it open, how far apart they stand, and the spares.</summary>
internal static class CountSection
{
    public static XElement? Of(PlanDocument document) => document.Plan.Counts.Count == 0 ? null : Markup.Html(
        "section", "counts", Markup.Html("h2", null, "How many"),
        Markup.Html("ul", null, document.Plan.Counts.Select(count => Markup.Html("li", null, Text(document, count)))));

    private static string Text(PlanDocument document, PartCount count) =>
        CountText.Of(count, document.Problem.Design.Parts.First(part => part.Name == count.Part), document.Unit);
}
