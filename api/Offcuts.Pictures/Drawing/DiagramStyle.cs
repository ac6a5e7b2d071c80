using System.Xml.Linq;

namespace Offcuts.Pictures.Drawing;

/// <summary>How a diagram looks: black on white only, so that any printer and any eye can tell its marks apart.</summary>
internal static class DiagramStyle
{
    /// <summary>Rules that reach no further than the drawing, which may stand in a page of its own style.</summary>
    public const string Css =
        ".cut-diagram text{font-family:Arial,Helvetica,'Liberation Sans','DejaVu Sans',sans-serif;fill:#000}"
        + ".cut-diagram .strong{font-weight:bold}"
        + ".cut-diagram .inverse{fill:#fff}"
        + ".cut-diagram .board{fill:#fff;stroke:#000;stroke-width:1.4}"
        + ".cut-diagram .part,.cut-diagram .strip{fill:#fff;stroke:#000;stroke-width:.8}"
        + ".cut-diagram .keep,.cut-diagram .waste{stroke:#000;stroke-width:.4}"
        + ".cut-diagram .kerf{fill:#000}"
        + ".cut-diagram .glue{stroke:#000;stroke-width:1.2;stroke-dasharray:7 3}"
        + ".cut-diagram .defect{fill:#fff;fill-opacity:.75;stroke:#000;stroke-width:1.6;stroke-dasharray:2.5 1.5}"
        + ".cut-diagram .held{fill:none;stroke:#000;stroke-width:1.2;stroke-dasharray:2.5 1.5}"
        + ".cut-diagram .cross,.cut-diagram .leader,.cut-diagram .dimension{stroke:#000;stroke-width:.7;fill:none}"
        + ".cut-diagram .paper{fill:#fff}"
        + ".cut-diagram .sign{fill:#fff;stroke:#000;stroke-width:.9}"
        + ".cut-diagram .first{fill:#000}"
        + ".cut-diagram .dot,.cut-diagram .head{fill:#000}"
        + ".cut-diagram .grain{stroke:#000;stroke-width:1.6}";

    /// <summary>Hatching for what is kept and dots for waste; a page may hold many drawings, so their ids carry the board's number.</summary>
    public static XElement Patterns(int boardNumber) => new(
        Shapes.Svg + "defs",
        Pattern($"keep-{boardNumber}", 8, new XElement(
            Shapes.Svg + "path", new XAttribute("d", "M0 8L8 0M-2 2L2 -2M6 10L10 6"), new XAttribute("stroke", "#000"), new XAttribute("stroke-width", "0.6"))),
        Pattern($"waste-{boardNumber}", 4, Shapes.Circle(1, 1, 0.7m, "dot"), Shapes.Circle(3, 3, 0.7m, "dot")));

    /// <summary>The attribute that fills a shape with a pattern of a board's drawing.</summary>
    public static XAttribute Fill(string pattern, int boardNumber) =>
        new("fill", FormattableString.Invariant($"url(#{pattern}-{boardNumber})"));

    private static XElement Pattern(string id, decimal size, params XElement[] content) => new(
        Shapes.Svg + "pattern", new XAttribute("id", id), new XAttribute("patternUnits", "userSpaceOnUse"),
        Shapes.At("width", size), Shapes.At("height", size), content);
}
