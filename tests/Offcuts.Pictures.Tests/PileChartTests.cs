using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Pictures.Tests;

public partial class PileChartTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly DateOnly First = new(2026, 1, 5);

    private static readonly Gen<IReadOnlyList<PilePoint>> Piles =
        Gen.Select(Gen.Int[1, 90], Gen.Int[0, 400], Gen.Decimal[0m, 5m]).List[1, 30].Select(steps =>
        {
            var day = First;
            return (IReadOnlyList<PilePoint>)[.. steps.Select(step => new PilePoint(day = day.AddDays(step.Item1), step.Item2, step.Item3))];
        });

    [Fact]
    public void Every_change_is_drawn_in_its_order_inside_the_view() => Piles.Sample(
        points =>
        {
            var drawing = XElement.Parse(PileChart.Svg(points, points[^1].Day.AddDays(3), DisplayUnit.Inch));
            var line = drawing.Descendants(Svg + "path").Single(path => path.Attribute("class")!.Value == "pile").Attribute("d")!.Value;
            var heights = Heights().Matches(line).Select(match => Number(match.Groups["y"].Value)).ToList();
            Assert.Equal(points.Count, heights.Count);
            // Higher on the page is more wood; what is written is rounded.
            for (var index = 1; index < points.Count; index++)
            {
                Assert.True((points[index].CubicMetres - points[index - 1].CubicMetres) * (heights[index] - heights[index - 1]) <= 0.001m);
            }

            var across = Across().Matches(line).Select(match => Number(match.Groups["x"].Value)).ToList();
            Assert.Equal(across.Order(), across);
            Assert.All(heights, y => Assert.InRange(y, 0, 300));
            Assert.All(across, x => Assert.InRange(x, 0, 720));
            Assert.All(drawing.Descendants(Svg + "text"), text => Assert.InRange(Number(text.Attribute("x")!.Value), 0, 720));
            // The numbers beside the axis are short enough for their room, and evenly spaced from 0.
            var axis = drawing.Descendants(Svg + "text").Where(text => text.Attribute("text-anchor")!.Value == "end" && !text.Value.Contains('-', StringComparison.Ordinal)).Select(text => text.Value).ToList();
            Assert.InRange(axis.Count, 2, 9);
            Assert.All(axis, number => Assert.True(number.Length <= 7, number));
            Assert.Equal(axis.Select((_, index) => Number(axis[1]) * index), axis.Select(Number));
        }, iter: 200);

    [Fact]
    public void It_says_how_much_there_is_and_when_there_is_nothing()
    {
        var one = PileChart.Svg([new PilePoint(First, 3, 0.002359737216m)], First, DisplayUnit.Inch);
        Assert.Contains("1.0 bd ft in 3 pieces", one, StringComparison.Ordinal);
        Assert.Contains("2026-01-05", one, StringComparison.Ordinal);
        Assert.Contains("0.0024 m³ in 1 piece.", PileChart.Svg([new PilePoint(First, 1, 0.002359737216m)], First, DisplayUnit.Millimetre), StringComparison.Ordinal);
        Assert.Contains("Nothing was ever logged.", PileChart.Svg([], First, DisplayUnit.Inch), StringComparison.Ordinal);
        Assert.Contains("0.0 bd ft", PileChart.Svg([new PilePoint(First, 0, 0)], First.AddDays(-1), DisplayUnit.Inch), StringComparison.Ordinal);
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("(?:M[0-9.]+ |V)(?<y>[0-9.]+)")]
    private static partial Regex Heights();

    [GeneratedRegex("[MH](?<x>[0-9.]+)")]
    private static partial Regex Across();
}
