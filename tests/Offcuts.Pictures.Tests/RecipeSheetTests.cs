using System.Xml;
using System.Xml.Linq;
using Xunit;

namespace Offcuts.Pictures.Tests;

public class RecipeSheetTests
{
    [Fact]
    public void The_layers_of_a_part_are_listed_in_order_with_board_and_piece()
    {
        var glueUp = Assert.Single(Page(RecipeSample.Document()).Descendants("div"), div => div.Attribute("class")?.Value == "glue-up");
        Assert.Equal("Leg: white ash, finished 1 5/8 x 2 x 28 in, each layer 13/16\"", glueUp.Element("h3")!.Value);
        Assert.Contains("glue them face to face in this order", glueUp.Element("p")!.Value, StringComparison.Ordinal);
        // On board 2 the brace, above the layer, is A.
        Assert.Equal(["#1; 2 B + 2 D"], Rows(glueUp).Skip(1));
    }

    [Fact]
    public void Layers_are_listed_by_part_and_in_the_order_of_the_stack()
    {
        var sample = RecipeSample.Document();
        var turned = sample.Plan.Laminations[0] with { Layers = [new(2, 2), new(1, 2)] };
        var glueUps = Page(sample with { Plan = sample.Plan with { Laminations = [turned, turned with { Copy = 2 }, turned with { Part = "Foot <x>" }] } })
            .Descendants("div").Single(div => div.Attribute("class")?.Value == "glue-up");
        Assert.Equal(["Leg: white ash, finished 1 5/8 x 2 x 28 in, each layer 13/16\"", "Foot <x>: white ash"], glueUps.Elements("h3").Select(title => title.Value));
        // Of the second leg and of the foot no board has a piece: then only the board is named.
        Assert.Equal(["#1; 2 B + 2 D", "#2; 2 + 2", "#1; 2 + 2"], Rows(glueUps).Where(row => row.StartsWith('#')));
    }

    [Fact]
    public void A_plan_without_layers_says_nothing_of_them() =>
        Assert.DoesNotContain("face to face", Page(Sample.Document()).Value, StringComparison.Ordinal);

    [Fact]
    public void Every_blank_says_what_becomes_of_it()
    {
        var rows = Page(RecipeSample.Document()).Descendants("section").Where(section => section.Attribute("class")?.Value == "board").SelectMany(Rows).ToList();
        Assert.Contains(rows, row => row.Contains("Slat #1..#2", StringComparison.Ordinal) && row.Contains("resaw into 2, each 3/4\" thick", StringComparison.Ordinal)
            && row.Contains("finished 5/8 x 4 3/4 x 20 in", StringComparison.Ordinal) && row.Contains("3/64\" counted for bow", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("Block #1..#3", StringComparison.Ordinal) && row.Contains("mill as one, then cut into 3 of 3\"", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("Leg #1 layer 2", StringComparison.Ordinal) && row.Contains("glue up 2 layers of 13/16\"", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("Brace spare", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("Slat #3..#4", StringComparison.Ordinal) && row.Contains("knot stays in it, ", StringComparison.Ordinal) && row.Contains(" from its lower edge", StringComparison.Ordinal));
    }

    [Fact]
    public void Words_stand_beside_a_defect_that_stays_and_lines_to_numbers_beside_words()
    {
        var words = XElement.Parse(Diagram.Svg(RecipeSample.Document(), 1)).Descendants().Where(element => element.Name.LocalName == "text").Select(text => text.Value).ToList();
        Assert.Contains(words, text => text.Contains("Slat #3..#4", StringComparison.Ordinal) && text.Contains("cut 5 x 20", StringComparison.Ordinal));

        // Cut 4, between brace and leg, has its number above the board.
        var thin = XElement.Parse(Diagram.Svg(RecipeSample.Document(), 2)).Descendants().ToList();
        var name = thin.First(element => element.Name.LocalName == "text" && element.Value.Contains("Brace spare", StringComparison.Ordinal));
        var middle = (decimal)name.DescendantsAndSelf().Attributes("x").First();
        Assert.All(
            thin.Where(element => element.Attribute("class")?.Value == "leader").SelectMany(line => line.Attributes("x1").Concat(line.Attributes("x2"))),
            end => Assert.True(Math.Abs((decimal)end - middle) > 60, $"{end} at {middle}"));
    }

    private static IEnumerable<string> Rows(XElement within) =>
        within.Descendants("tr").Select(row => string.Join("; ", row.Elements("td").Skip(1).Select(cell => cell.Value)));

    private static XElement Page(PlanDocument document)
    {
        using var reader = XmlReader.Create(
            new StringReader(CutSheet.Html(document).Replace('\u00A0', ' ')), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XElement.Load(reader);
    }
}
