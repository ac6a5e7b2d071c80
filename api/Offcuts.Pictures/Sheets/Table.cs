using System.Xml.Linq;

namespace Offcuts.Pictures.Sheets;

/// <summary>Tables and tick boxes of the cut sheet.</summary>
internal static class Table
{
    /// <summary>A table; a column whose heading is empty holds tick boxes.</summary>
    public static XElement Of(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<object?>> rows) => Markup.Html(
        "table", null,
        Markup.Html("thead", null, Markup.Html("tr", null, headings.Select(heading => heading.Length == 0
            ? Markup.Html("th", "tick-column", Markup.Html("span", "spoken", "done"))
            : Markup.Html("th", null, heading)))),
        Markup.Html("tbody", null, rows.Select(row => Markup.Html("tr", null, row.Select(cell => Markup.Html("td", Width(cell), cell))))));

    // Only words that no column could hold may break anywhere: else columns shrink until every word breaks.
    private static string? Width(object? cell) =>
        cell is string text && text.Split(' ').Any(word => word.Length > 16) ? "long" : null;

    /// <summary>A box to tick, on paper or on a screen.</summary>
    public static XElement Tick(string what) => new(
        "input", new XAttribute("type", "checkbox"), new XAttribute("aria-label", what));
}
