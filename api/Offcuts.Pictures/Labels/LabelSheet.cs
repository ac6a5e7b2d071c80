using System.Globalization;
using System.Xml.Linq;
using Offcuts.Domain;
using Offcuts.Pictures.Drawing;

namespace Offcuts.Pictures.Labels;

/// <summary>Labels for boards, to print on sheets of labels: one for each piece.</summary>
public sealed class LabelSheet
{
    private const string Font = "Arial,Helvetica,'Liberation Sans','DejaVu Sans',sans-serif";

    private readonly LabelStock stock;
    private readonly SpeciesCatalogue catalogue;
    private readonly DisplayUnit unit;

    // The places on the sheets; null for a label that was used before.
    private readonly List<Board?> places;

    /// <summary>The labels of boards.</summary>
    /// <param name="boards">The boards, each as often as its quantity.</param>
    /// <param name="stock">The sheet of labels.</param>
    /// <param name="skip">How many labels of the first sheet were used before, counted along the rows.</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="unit">The unit of sizes.</param>
    public LabelSheet(IEnumerable<Board> boards, LabelStock stock, int skip, SpeciesCatalogue catalogue, DisplayUnit unit)
    {
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentOutOfRangeException.ThrowIfNegative(skip);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(skip, stock.Count);
        (this.stock, this.catalogue, this.unit) = (stock, catalogue, unit);
        places = [.. Enumerable.Repeat<Board?>(null, skip), .. boards.SelectMany(board => Enumerable.Repeat(board, board.Quantity))];
    }

    /// <summary>Sheets that it takes.</summary>
    public int Pages => (places.Count + stock.Count - 1) / stock.Count;

    /// <summary>One sheet as a Scalable Vector Graphics document of the sheet's size.</summary>
    /// <param name="page">Its number, from 1.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.NotFound"/>: it takes fewer sheets.</exception>
    public string Svg(int page) => Markup.Write(page >= 1 && page <= Pages
        ? Page(page)
        : throw new OffcutsException(ErrorCode.NotFound, FormattableString.Invariant($"There is no sheet {page}: these labels take {Pages}.")));

    /// <summary>All sheets as one HTML page that prints each on a sheet of its own. It loads nothing and runs no script.</summary>
    public string Html() => $"<!DOCTYPE html>\n{Markup.Write(new XElement(
        "html", new XAttribute("lang", "en"),
        Markup.Html(
            "head", null,
            new XElement("meta", new XAttribute("charset", "utf-8")),
            new XElement("title", "Labels"),
            new XElement("style", string.Create(
                CultureInfo.InvariantCulture,
                $"@page{{size:{Mm(stock.PaperWidth)}mm {Mm(stock.PaperHeight)}mm;margin:0}}body{{margin:0}}svg.page{{display:block;break-after:page}}svg.page:last-child{{break-after:auto}}"))),
        Markup.Html("body", null, Enumerable.Range(1, Pages).Select(Page))))}\n";

    private XElement Page(int page) => new(
        Shapes.Svg + "svg", new XAttribute("class", "page"), new XAttribute("role", "img"),
        new XAttribute("width", $"{Mm(stock.PaperWidth)}mm"), new XAttribute("height", $"{Mm(stock.PaperHeight)}mm"),
        new XAttribute("viewBox", $"0 0 {Mm(stock.PaperWidth)} {Mm(stock.PaperHeight)}"),
        new XAttribute("font-family", Font),
        Shapes.Title(FormattableString.Invariant($"Labels, sheet {page} of {Pages}")),
        places.Skip((page - 1) * stock.Count).Take(stock.Count).Index().Where(place => place.Item is not null).Select(place => LabelAt(place.Index, place.Item!)));

    private XElement LabelAt(int place, Board board)
    {
        var (row, column) = Math.DivRem(place, stock.Columns);
        var x = stock.Left + ((stock.Width + stock.Gap) * column);
        var y = stock.Top + (stock.Height * row);
        return new Label(board, catalogue.NameOf(board.Species), unit).Draw(x.Millimetres, y.Millimetres, stock.Width.Millimetres, stock.Height.Millimetres);
    }

    private static string Mm(Length length) => length.Millimetres.ToString("0.######", CultureInfo.InvariantCulture);
}
