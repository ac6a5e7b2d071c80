using System.Globalization;
using System.Xml.Linq;
using Offcuts.Domain;
using Offcuts.Pictures.Drawing;

namespace Offcuts.Pictures.Labels;

/// <summary>One label: the id large enough to read at arm's length, what the board is, and a code that holds the id.</summary>
/// <param name="board">The board.</param>
/// <param name="species">Its species as people say it.</param>
/// <param name="unit">The unit of sizes.</param>
internal sealed class Label(Board board, string species, DisplayUnit unit)
{
    // Millimetres. Printers shift a sheet by up to a millimetre or so.
    private const decimal Padding = 1.6m;
    private const decimal LargestId = 9m;
    private const decimal LargestText = 3.6m;
    private const decimal SmallestText = 1.5m;

    /// <summary>Draws it with its upper left corner at a place; everything in millimetres.</summary>
    public XElement Draw(decimal x, decimal y, decimal width, decimal height)
    {
        var code = Math.Min(height - Padding, width * 0.42m);
        var left = Padding / 2m + code + (Padding / 2m);
        var room = width - left - Padding;
        var lines = Lines(height);
        // The id takes as much as two lines and a half of the others.
        var each = (height - (2 * Padding)) / (2.5m + lines.Count) / Lettering.LineHeight;
        var id = Fit(board.Id, Math.Min(LargestId, each * 2.5m), room, bold: true);
        var texts = new List<XElement> { Line(board.Id, left, Padding + (id * 0.85m), id, isBold: true) };
        var at = Padding + (id * 1.1m);
        foreach (var (text, mayBeCut) in lines)
        {
            var font = Fit(text, Math.Min(LargestText, each), room, bold: false, mayBeCut ? SmallestText : 0);
            at += font * Lettering.LineHeight;
            texts.Add(Line(mayBeCut ? Lettering.Shorten(text, font, room) : text, left, at - (font * 0.2m), font, isBold: false));
        }

        return new XElement(
            Shapes.Svg + "g", new XAttribute("class", "label"),
            new XAttribute("transform", string.Create(CultureInfo.InvariantCulture, $"translate({x:0.###} {y:0.###})")),
            QrMark.Of(board.Id, Padding / 2m, (height - code) / 2m, code), texts);
    }

    // A size that is cut off is another size: only names may be.
    private List<(string Text, bool MayBeCut)> Lines(decimal height)
    {
        var lines = new List<(string, bool)> { (species, true), (SizeText.Format(board.Size, board.Estimates, unit), false) };
        string?[] others = height < 15 ? [] : height < 30 ? [board.Place ?? board.Batch] : [board.Batch, board.Place];
        lines.AddRange(others.OfType<string>().Select(text => (text, true)));
        return lines;
    }

    private static decimal Fit(string text, decimal largest, decimal room, bool bold, decimal smallest = 0) =>
        Math.Max(smallest, Math.Min(largest, room / Lettering.Width(text, 1, bold)));

    private static XElement Line(string text, decimal x, decimal y, decimal size, bool isBold) => new(
        Shapes.Svg + "text", Shapes.At("x", x), Shapes.At("y", y), Shapes.At("font-size", size), isBold ? new XAttribute("font-weight", "bold") : null, text);
}
