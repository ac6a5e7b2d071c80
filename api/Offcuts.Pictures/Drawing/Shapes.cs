using System.Globalization;
using System.Xml.Linq;

namespace Offcuts.Pictures.Drawing;

/// <summary>SVG elements (Scalable Vector Graphics 1.1), as far as a cutting diagram needs them.</summary>
internal static class Shapes
{
    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static XElement Rect(Box box, string cssClass, params object?[] more) => new(
        Svg + "rect", new XAttribute("class", cssClass), At("x", box.X), At("y", box.Y),
        At("width", box.Width), At("height", box.Height), more);

    public static XElement Line(decimal x1, decimal y1, decimal x2, decimal y2, string cssClass) => new(
        Svg + "line", new XAttribute("class", cssClass), At("x1", x1), At("y1", y1), At("x2", x2), At("y2", y2));

    public static XElement Circle(decimal x, decimal y, decimal radius, string cssClass) => new(
        Svg + "circle", new XAttribute("class", cssClass), At("cx", x), At("cy", y), At("r", radius));

    /// <summary>One line of text; y is its base line.</summary>
    public static XElement Text(decimal x, decimal y, decimal fontSize, string anchor, string text, string? cssClass = null) => new(
        Svg + "text", cssClass is null ? null : new XAttribute("class", cssClass), At("x", x), At("y", y),
        At("font-size", fontSize), new XAttribute("text-anchor", anchor), text);

    /// <summary>Lines of text, one below the other, centred on a point; turned to read upwards if asked.</summary>
    public static XElement Block(decimal x, decimal y, decimal fontSize, bool upwards, IReadOnlyList<string> lines)
    {
        var first = y - ((lines.Count - 1) * fontSize * Lettering.LineHeight / 2) + (fontSize * 0.36m);
        return new XElement(
            Svg + "g",
            upwards ? new XAttribute("transform", string.Create(CultureInfo.InvariantCulture, $"rotate(-90 {x:0.##} {y:0.##})")) : null,
            lines.Select((line, index) => Text(
                x, first + (index * fontSize * Lettering.LineHeight), fontSize, "middle", line, index == 0 ? "strong" : null)));
    }

    public static XElement Title(string text) => new(Svg + "title", text);

    public static XAttribute At(string name, decimal value) => new(name, value.ToString("0.####", CultureInfo.InvariantCulture));
}
