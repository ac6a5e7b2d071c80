using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Offcuts.Domain;
using Offcuts.Pictures.Labels;
using Xunit;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Offcuts.Pictures.Tests;

public partial class LabelSheetTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Stocks => [.. LabelStock.All.Select(stock => stock.Name)];

    [Theory]
    [MemberData(nameof(Stocks))]
    public void All_labels_lie_on_the_paper_and_none_on_another(string name)
    {
        var stock = LabelStock.Find(name)!;
        Assert.True(stock.Left >= Length.Zero && stock.Top >= Length.Zero && stock.Gap >= Length.Zero);
        Assert.True(stock.Left + (stock.Width * stock.Columns) + (stock.Gap * (stock.Columns - 1)) <= stock.PaperWidth);
        Assert.True(stock.Top + (stock.Height * stock.Rows) <= stock.PaperHeight);
    }

    // The margins that makers of these sheets print in their templates (from memory).
    [Theory]
    [InlineData("letter-3x10", 0.1875, 0.5)]
    [InlineData("letter-2x5", 0.15625, 0.5)]
    [InlineData("letter-4x20", 0.28125, 0.5)]
    public void Margins_are_those_of_the_trade(string name, decimal left, decimal top)
    {
        var stock = LabelStock.Find(name)!;
        Assert.Equal((left, top), (stock.Left.Inches, stock.Top.Inches));
    }

    // Read back by a library that knows nothing of ours, from the picture's own path.
    [Theory]
    [InlineData("K7A")]
    [InlineData("333")]
    [InlineData("K7A4PX")]
    [InlineData("K7A4PXTRWQHJ")]
    public void The_code_holds_the_id(string id)
    {
        var page = XDocument.Parse(Sheet([Board(id)]).Svg(1));
        var code = Assert.Single(page.Descendants(Svg + "svg"), element => (string?)element.Attribute("class") == "qr");
        Assert.Equal(id, Decode(code));
    }

    [Theory]
    [MemberData(nameof(Stocks))]
    public void Everything_is_drawn_within_its_label_and_no_size_is_cut_off(string name)
    {
        var stock = LabelStock.Find(name)!;
        var board = Board("K7A4PX") with
        {
            Species = "eastern-white-pine",
            Size = new(Length.FromInches(1, 63, 64), Length.FromInches(11, 63, 64), Length.FromInches(119, 63, 64)),
            Estimates = new Estimates(true, true, true),
            Place = "the lowest shelf behind the door of the second shed, left",
            Batch = "the tree that fell in the storm of the year before last",
        };
        var label = Assert.Single(XDocument.Parse(Sheet([board], stock).Svg(1)).Descendants(Svg + "g"));
        Assert.Contains(label.Elements(Svg + "text"), text => text.Value == "about 1 63/64 x about 11 63/64 x about 119 63/64 in");
        foreach (var text in label.Elements(Svg + "text"))
        {
            var (x, y, size) = (Of(text, "x"), Of(text, "y"), Of(text, "font-size"));
            // As wide as the drawing takes its letters to be, which is more than they are.
            Assert.True(x + Drawing.Lettering.Width(text.Value, size, text.Attribute("font-weight") is not null) <= stock.Width.Millimetres, text.ToString());
            Assert.True(y - size >= -0.5m && y + (size * 0.25m) <= stock.Height.Millimetres, text.ToString());
        }

        var code = label.Element(Svg + "svg")!;
        Assert.True(Of(code, "y") >= 0 && Of(code, "y") + Of(code, "height") <= stock.Height.Millimetres);
        // Readers of telephones want modules of a third of a millimetre or more (common practice); 29 modules with the quiet zone.
        Assert.True(Of(code, "width") / 29 > 0.33m);
    }

    [Fact]
    public void There_is_a_label_for_each_piece_sheets_go_on_and_used_labels_are_left_out()
    {
        var sheet = Sheet([Board("K7A") with { Quantity = 31 }, Board("H6K")], skip: 2);
        Assert.Equal(2, sheet.Pages);
        Assert.Equal(28, XDocument.Parse(sheet.Svg(1)).Descendants(Svg + "g").Count());
        var second = XDocument.Parse(sheet.Svg(2)).Descendants(Svg + "text").Where(text => text.Attribute("font-weight") is not null).Select(text => text.Value);
        Assert.Equal(["K7A", "K7A", "K7A", "H6K"], second);
        Assert.Equal(ErrorCode.NotFound, Assert.Throws<OffcutsException>(() => sheet.Svg(3)).Code);
        // The page is well-formed XML too.
        Assert.Equal(2, XDocument.Parse(sheet.Html().Split('\n', 2)[1]).Descendants(Svg + "svg").Count(svg => (string?)svg.Attribute("class") == "page"));
    }

    [Fact]
    public void What_people_wrote_is_text_and_no_markup()
    {
        var svg = Sheet([Board("K7A") with { Place = "<script>alert(1)</script>&\u0001" }], LabelStock.Find("letter-2x5")!).Svg(1);
        Assert.DoesNotContain("<script", svg, StringComparison.Ordinal);
        Assert.Contains(XDocument.Parse(svg).Descendants(Svg + "text"), text => text.Value.StartsWith("<script", StringComparison.Ordinal));
    }

    private static Board Board(string id) => new()
    {
        Id = id,
        Species = "black-walnut",
        Size = new(Length.FromInches(1), Length.FromInches(7), Length.FromInches(62)),
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    private static LabelSheet Sheet(IEnumerable<Board> boards, LabelStock? stock = null, int skip = 0) =>
        new(boards, stock ?? LabelStock.All[0], skip, SpeciesCatalogue.Default, DisplayUnit.Inch);

    private static decimal Of(XElement element, string name) => decimal.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string? Decode(XElement code)
    {
        const int Scale = 8;
        var modules = int.Parse(code.Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
        var side = modules * Scale;
        var grey = Enumerable.Repeat((byte)255, side * side).ToArray();
        foreach (Match run in Run().Matches(code.Element(Svg + "path")!.Attribute("d")!.Value))
        {
            var (x, y, length) = (Number(run, 1), Number(run, 2), Number(run, 3));
            for (var row = y * Scale; row < (y + 1) * Scale; row++)
            {
                Array.Fill(grey, (byte)0, (row * side) + (x * Scale), length * Scale);
            }
        }

        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8))))?.Text;
    }

    private static int Number(Match match, int group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("M([0-9]+) ([0-9]+)h([0-9]+)v1h-[0-9]+z")]
    private static partial Regex Run();
}
