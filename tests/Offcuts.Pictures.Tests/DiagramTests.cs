using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Offcuts.Domain;
using Offcuts.Pictures.Drawing;
using Xunit;

namespace Offcuts.Pictures.Tests;

public class DiagramTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly string[] PieceClasses = ["part", "strip", "keep", "waste"];

    [Fact]
    public void Every_piece_and_kerf_lies_where_the_plan_says_to_scale() => RandomLayout.Documents.Sample(
        document =>
        {
            var board = document.Plan.Boards[0];
            var drawing = XElement.Parse(Diagram.Svg(document, 1));
            var outline = Rects(drawing, "board").Single();
            // From the longer side: what is written is rounded to 4 decimals.
            var scale = Math.Max(outline.Width, outline.Height) / Math.Max(board.Size.Length.Ticks, board.Size.Width.Ticks);
            AssertSame(board.Pieces.Select(piece => piece.At), [.. PieceClasses.SelectMany(name => Rects(drawing, name))], board, outline, scale);
            AssertSame(board.Cuts.Select(cut => cut.Kerf), [.. Rects(drawing, "kerf")], board, outline, scale);
        }, iter: 300);

    [Fact]
    public void Nothing_is_drawn_or_written_outside_the_view() => RandomLayout.Documents.Sample(
        document =>
        {
            var drawing = XElement.Parse(Diagram.Svg(document, 1));
            var view = drawing.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
            Assert.All(drawing.Descendants(Svg + "rect").Concat(drawing.Descendants(Svg + "text")), element =>
            {
                Assert.InRange(Number(element.Attribute("x")!.Value), 0, view[2]);
                Assert.InRange(Number(element.Attribute("y")!.Value), view[1], view[1] + view[3]);
            });
        }, iter: 300);

    [Fact]
    public void Every_cut_has_its_number_and_every_piece_its_letter() => RandomLayout.Documents.Sample(
        document =>
        {
            var board = document.Plan.Boards[0];
            var drawing = XElement.Parse(Diagram.Svg(document, 1));
            var texts = drawing.Descendants(Svg + "text").Select(text => text.Value).ToList();
            Assert.All(board.Cuts, cut => Assert.Contains(cut.Order.ToString(CultureInfo.InvariantCulture), texts));
            var keys = drawing.Descendants(Svg + "rect").Attributes("data-key").Select(key => key.Value).ToList();
            Assert.Equal(board.Pieces.Count(piece => piece is not WastePiece), keys.Distinct().Count());
            Assert.All(keys, key => Assert.Contains(texts, text => text == key || text.StartsWith($"{key} ", StringComparison.Ordinal)));
        }, iter: 300);

    [Fact]
    public void Marks_in_one_row_of_a_lane_never_touch() => Gen.Decimal[0, 600].List[0, 60].Sample(wanted =>
    {
        var places = Drawing.Lane.Spread(wanted, 15, 0, 600);
        Assert.Equal(wanted.Count, places.Count);
        Assert.All(places.GroupBy(place => place.Row), row =>
        {
            var ordered = row.Select(place => place.At).Order().ToList();
            Assert.InRange(ordered[0], 0, 600);
            Assert.InRange(ordered[^1], 0, 600);
            Assert.All(ordered.Zip(ordered.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 15));
        });
    });

    [Fact]
    public void A_defect_that_stays_in_its_part_is_not_crossed_out_and_the_key_says_where_it_stays()
    {
        var document = Sample.Document();
        var board = document.Plan.Boards[0];
        var part = board.Pieces.OfType<PartPiece>().First();
        var stain = new Defect("stain", new Rect(part.At.X + Sample.In(2), part.At.Y, Sample.In(8), Sample.In(2)));
        var stained = document with { Plan = document.Plan with { Boards = [board with { Defects = [.. board.Defects, stain] }, .. document.Plan.Boards.Skip(1)] } };
        var drawing = XElement.Parse(Diagram.Svg(stained, 1));
        Assert.Single(Rects(drawing, "held"));
        Assert.Single(Rects(drawing, "defect"));
        Assert.Equal(2, drawing.Descendants(Svg + "line").Count(line => line.Attribute("class")?.Value == "cross"));
        Assert.Contains(drawing.Descendants(Svg + "text"), text => text.Value == "stain");
        Assert.Contains(drawing.Descendants(Svg + "text"), text =>
            text.Value.StartsWith("defect: stain", StringComparison.Ordinal) && text.Value.Contains("; stays in ", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_size_of_the_sample_is_readable_on_its_drawing()
    {
        var drawing = XElement.Parse(Diagram.Svg(Sample.Document(), 1));
        var text = string.Join("\n", drawing.Descendants(Svg + "text").Select(line => line.Value));
        Assert.Contains("cut 2 1/4 x 30 1/2 in", text, StringComparison.Ordinal);
        Assert.Contains("finished 13/16 x 2 x 30 in", text, StringComparison.Ordinal);
        Assert.Contains("cut 3/4 x 1 3/8 in, finished 3/4 x 1/2 x 1 in", text, StringComparison.Ordinal);
        Assert.Contains("sub-panel 2 strip 1", text, StringComparison.Ordinal);
        Assert.Contains("counts 2\" wide", text, StringComparison.Ordinal);
        Assert.Contains("defect: knot & nail 92\" to 94\" along", text, StringComparison.Ordinal);
        Assert.Contains("96\"", text, StringComparison.Ordinal);
        Assert.Contains("First: rip, along the grain", text, StringComparison.Ordinal);
        Assert.Contains("grain", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_breaks_long_names_into_lines_instead_of_cutting_them_off()
    {
        const string Name = "Long lower drawer runner of the left hand pedestal beside the knee hole, fitted last";
        var plan = Sample.Document(legName: Name);
        var board = plan.Plan.Boards[0];
        var lines = Lettering.Wrap($"A:  cut 2 x 3 in, finished 1 x 2 x 3 in:  {Name}", 9.5m, 300);
        Assert.True(lines.Count > 1);
        Assert.EndsWith(Name, string.Join(' ', lines), StringComparison.Ordinal);
        Assert.All(lines, line => Assert.True(Lettering.Width(line, 9.5m) <= 300));
        var key = XDocument.Parse(Diagram.Svg(plan, board.Number)).Descendants().Where(element => element.Name.LocalName == "text")
            .Select(element => element.Value).Where(text => text.Contains(":  cut", StringComparison.Ordinal));
        Assert.All(key, text => Assert.DoesNotContain('…', text));
    }

    [Fact]
    public void A_turned_part_is_named_by_its_own_width_and_length()
    {
        var text = string.Join("\n", XElement.Parse(Diagram.Svg(Sample.Document(), 3)).Descendants(Svg + "text").Select(line => line.Value));
        Assert.Contains("Back (turned)", text, StringComparison.Ordinal);
        Assert.Contains("cut 30 x 20 in", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_metric_shop_sees_millimetres_only()
    {
        var drawing = Diagram.Svg(Sample.Document(DisplayUnit.Millimetre), 2);
        Assert.Contains("2438.4 mm", drawing, StringComparison.Ordinal);
        Assert.DoesNotContain("\" wide", drawing, StringComparison.Ordinal);
        Assert.DoesNotContain(" in</text>", drawing, StringComparison.Ordinal);
    }

    [Fact]
    public void A_board_that_the_plan_has_not_is_not_found()
    {
        var error = Assert.Throws<OffcutsException>(() => Diagram.Svg(Sample.Document(), 9));
        Assert.Equal(ErrorCode.NotFound, error.Code);
        Assert.Contains("1 to 3", error.Message, StringComparison.Ordinal);
    }

    private static void AssertSame(
        IEnumerable<Rect> planned, IReadOnlyList<(double X, double Y, double Width, double Height)> drawn,
        BoardCut board, (double X, double Y, double Width, double Height) outline, double scale)
    {
        const double Rounding = 0.0002;
        var expected = planned.Select(at => (
            X: outline.X + (at.X.Ticks * scale), Y: outline.Y + ((board.Size.Width - at.Top).Ticks * scale),
            Width: at.Length.Ticks * scale, Height: at.Width.Ticks * scale)).ToList();
        Assert.Equal(expected.Count, drawn.Count);
        Assert.All(expected, want => Assert.Contains(drawn, rect =>
            Math.Abs(rect.X - want.X) < Rounding && Math.Abs(rect.Y - want.Y) < Rounding
            && Math.Abs(rect.Width - want.Width) < Rounding && Math.Abs(rect.Height - want.Height) < Rounding));
    }

    private static IEnumerable<(double X, double Y, double Width, double Height)> Rects(XElement drawing, string cssClass) =>
        drawing.Descendants(Svg + "rect").Where(rect => rect.Attribute("class")!.Value == cssClass).Select(rect => (
            Number(rect.Attribute("x")!.Value), Number(rect.Attribute("y")!.Value),
            Number(rect.Attribute("width")!.Value), Number(rect.Attribute("height")!.Value)));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
