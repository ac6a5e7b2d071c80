using System.Xml;
using System.Xml.Linq;
using CsCheck;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Pictures.Tests;

public class CutSheetTests
{
    [Fact]
    public void It_says_what_to_buy_what_is_missing_and_what_to_mind()
    {
        var text = Page(Sample.Document()).Value;
        Assert.Contains("Incomplete: 2 pieces are missing", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Proved", text, StringComparison.Ordinal);
        Assert.Contains("5.00 USD (6.7 % of the wood's cost)", text, StringComparison.Ordinal);
        Assert.Contains("2 of Door <x> cannot be made", text, StringComparison.Ordinal);
        Assert.Contains("Yard & Sons: 75.00 USD", text, StringComparison.Ordinal);
        Assert.Contains("4/4 black walnut, rough, clear show face, at least 9\" wide and 8 ft long", text, StringComparison.Ordinal);
        // 1 x 9 x 96 in is 864 cubic inches: 6 board feet of 144.
        Assert.Contains("6.0 board feet in all at 12.50 USD a board foot", text, StringComparison.Ordinal);
        Assert.Contains("Nuts & Bolts: 1.00 USD", text, StringComparison.Ordinal);
        Assert.Contains("Any supplier: 9.00 USD", text, StringComparison.Ordinal);
        Assert.Contains("metal detector", text, StringComparison.Ordinal);
        Assert.Contains("machine's manual", text, StringComparison.Ordinal);
        Assert.Contains("licensed practice", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Reach.Easy, "rack <A>")]
    [InlineData(Reach.Behind, "rack <A> (behind)")]
    [InlineData(Reach.Buried, "rack <A> (buried)")]
    public void It_says_where_a_board_lies_and_whether_that_is_hard_to_get_at(Reach reach, string lies)
    {
        var sample = Sample.Document();
        var page = Page(sample with { Problem = sample.Problem with { Reaches = new Dictionary<string, Reach> { ["rack <A>"] = reach } } });
        Assert.Single(page.Descendants("td"), cell => cell.Value == lies);
        Assert.Contains(page.Descendants(), text => text.Name.LocalName == "text" && text.Value.EndsWith($"; lies: {lies}", StringComparison.Ordinal));
    }

    [Fact]
    public void It_says_what_has_changed_since_the_plan_that_it_started_from()
    {
        var sample = Sample.Document();
        Assert.DoesNotContain("Changed since", Page(sample).Value, StringComparison.Ordinal);
        // The earlier plan had no sheet to cut, bought two walnut boards, and cut the first board one cut less.
        var first = sample.Plan.Boards[0];
        var before = sample.Plan with
        {
            Boards = [first with { Cuts = [.. first.Cuts.SkipLast(1)], Pieces = [.. first.Pieces.SkipLast(1)] }, sample.Plan.Boards[1]],
            Purchases = [sample.Plan.Purchases[0] with { Count = 2 }],
            WoodCost = new Money(15000),
        };
        var page = Page(sample with { EarlierId = "6", Problem = sample.Problem with { Earlier = new EarlierPlan(sample.Problem, before) } });
        var section = Assert.Single(page.Descendants("section"), section => (string?)section.Attribute("class") == "changes");
        Assert.Equal("Changed since plan 6", section.Element("h2")!.Value);
        Assert.Equal(
            [
                "It costs 85.00 USD instead of 160.00 USD.", "Cut as before: 2.", "1. Board K7M is cut otherwise.", "3. Board P2R is used now.", "Back is new: 1 from P2R.",
                "Buy 1 instead of 2 of Walnut FAS from Yard & Sons, 1 x 9 x 96 in.",
            ],
            section.Descendants("li").Select(line => line.Value.Replace('\u00a0', ' ')));
    }

    [Theory]
    [InlineData(PlanStatus.Proved, true)]
    [InlineData(PlanStatus.Feasible, false)]
    [InlineData(PlanStatus.Incomplete, false)]
    public void It_says_proved_only_of_what_is(PlanStatus status, bool proved)
    {
        var sample = Sample.Document();
        var html = CutSheet.Html(sample with { Plan = sample.Plan with { Status = status } });
        Assert.Equal(proved, html.Contains("proved", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void What_is_proved_is_said_of_the_money_that_the_bound_speaks_of()
    {
        var sample = Sample.Document();
        var text = Page(sample with { Plan = sample.Plan with { Status = PlanStatus.Proved, StopCost = new Money(500) } }).Value;
        Assert.Contains("spends less on wood, charges and further stops.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_incomplete_plan_that_cannot_cost_less_is_proved_for_the_rest()
    {
        var sample = Sample.Document();
        var text = Page(sample with { Plan = sample.Plan with { WoodBound = sample.Plan.WoodCost } }).Value;
        Assert.Contains("Proved for the parts that can be had: no plan for them spends less on wood.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("0.00 USD (0 %", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_piece_has_a_row_with_its_sizes_and_a_box_to_tick() => RandomLayout.Documents.Sample(
        document =>
        {
            var board = document.Plan.Boards[0];
            var rows = Page(document).Descendants("tr").Select(row => row.Elements("td").Select(cell => cell.Value).ToList()).ToList();
            Assert.All(KeyedPiece.Of(document, board).Where(piece => piece.Piece is not WastePiece), piece =>
                Assert.Single(rows, row => row.Count == 5 && row[1] == piece.Key && row[3] == piece.Cut));
            Assert.Equal(board.Cuts.Count, rows.Count(row => row.Count == 5 && int.TryParse(row[1], out _)));
        }, iter: 100);

    [Fact]
    public void Fence_and_stop_are_set_to_the_piece_that_is_wanted()
    {
        var rows = Page(Sample.Document()).Descendants("section").First(section => section.Attribute("class")?.Value == "board")
            .Descendants("tr").Select(row => string.Join("; ", row.Elements("td").Skip(1).Select(cell => cell.Value))).ToList();
        Assert.StartsWith("1; rip, fence 2 1/4\"; lower edge;", rows[1], StringComparison.Ordinal);
        Assert.StartsWith("2; crosscut, stop 30 1/2\"; left end;", rows[2], StringComparison.Ordinal);
        Assert.StartsWith("3; crosscut, stop 30 1/2\" (still set); left end;", rows[3], StringComparison.Ordinal);
        Assert.Contains("49 3/8", string.Join("\n", rows), StringComparison.Ordinal);
    }

    [Fact]
    public void Waste_on_the_near_side_is_not_what_the_fence_is_set_to()
    {
        // Board 2, cut 5: 2 5/8 in of waste below, the strip of 6 1/4 in above.
        var document = Sample.Document();
        var board = document.Plan.Boards[1];
        var pieces = KeyedPiece.Of(document, board);
        var last = SawStep.Of(board)[^1];
        Assert.True(last.MeasuresHigh(pieces));
        Assert.Equal(Sample.In(6, 1, 4), last.Setting(pieces));
    }

    [Fact]
    public void Glue_ups_list_their_strips_in_order_with_the_width_each_counts_for()
    {
        var rows = Page(Sample.Document()).Descendants("div").Where(div => div.Attribute("class")?.Value == "sub-panel")
            .SelectMany(div => div.Descendants("tr").Skip(1)).Select(row => string.Join("; ", row.Elements("td").Skip(1).Select(cell => cell.Value))).ToList();
        Assert.Equal(4, rows.Count);
        Assert.StartsWith("1; 1 (K7M); ", rows[2], StringComparison.Ordinal);
        Assert.EndsWith("; 2\"", rows[2], StringComparison.Ordinal);
        Assert.EndsWith("; 6\"", rows[3], StringComparison.Ordinal);
    }

    [Fact]
    public void Glue_ups_say_how_wide_each_sub_panel_is()
    {
        var sample = Sample.Document();
        var top = sample.Plan.GlueUps[0];
        var unequal = top with { SubPanels = [top.SubPanels[0] with { NeededWidth = Sample.In(8) }, top.SubPanels[1] with { NeededWidth = Sample.In(7, 1, 2) }] };
        var said = Page(sample with { Plan = sample.Plan with { GlueUps = [unequal] } }).Descendants("div")
            .Single(div => div.Attribute("class")?.Value == "glue-up").Descendants("p").Select(line => line.Value).ToList();
        Assert.Equal(["2 sub-panels, 8\" and 7 1/2\" wide.", "Sub-panel 1 of 2: the strips reach 8\", the width that is needed.", "Sub-panel 2 of 2: the strips reach 8\"; rip it to 7 1/2\"."], said);
    }

    [Fact]
    public void Any_name_at_all_is_safe() => Gen.String[Gen.Char, 0, 200].Sample(
        name =>
        {
            var document = Sample.Document(legName: name);
            Assert.DoesNotContain("<script", Page(document).ToString(), StringComparison.OrdinalIgnoreCase);
            XElement.Parse(Diagram.Svg(document, 1));
        }, iter: 200);

    [Theory]
    [InlineData("</style><script>alert(1)</script>")]
    [InlineData("\" onload=\"alert(1)")]
    [InlineData("椅子の脚 🪑 très très longue nommée au-delà de toute raison pour voir ce qui arrive quand le nom ne tient plus sur la planche")]
    public void A_hostile_or_long_name_stays_text(string name)
    {
        var page = Page(Sample.Document(legName: name));
        Assert.DoesNotContain(page.Descendants(), element => element.Name.LocalName == "script");
        Assert.Empty(page.Descendants().Attributes("onload"));
        Assert.Contains($"{name} #1", page.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void It_loads_nothing_and_runs_nothing()
    {
        var html = CutSheet.Html(Sample.Document()).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
        foreach (var word in (string[])["http", "src=", "href=", "@import", "<script", "<link", "<iframe"])
        {
            Assert.DoesNotContain(word, html, StringComparison.OrdinalIgnoreCase);
        }

        var local = html.Split("url(").Skip(1);
        Assert.All(local, rest => Assert.StartsWith("#", rest, StringComparison.Ordinal));
    }

    [Fact]
    public void On_paper_no_board_is_split_and_every_id_is_unique()
    {
        var page = Page(Sample.Document());
        var css = page.Element("head")!.Element("style")!.Value;
        Assert.Contains("@media print", css, StringComparison.Ordinal);
        Assert.Contains(".board,.supplier,.sub-panel,.facts,.missing{break-inside:avoid}", css, StringComparison.Ordinal);
        Assert.Equal(-1, css.IndexOfAny(['<', '>', '&']));
        var ids = page.Descendants().Attributes("id").Select(id => id.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public void A_fraction_never_parts_from_its_whole_number()
    {
        var html = CutSheet.Html(Sample.Document());
        Assert.Contains("30\u00A01/2", html, StringComparison.Ordinal);
        Assert.DoesNotMatch("[0-9] [0-9]+/[0-9]+ x", html[html.IndexOf("<body", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void It_says_what_warp_costs_each_piece_and_how_leftovers_end()
    {
        var sample = Sample.Document();
        var warp = new Warp(Sample.In(0, 1, 2), default, Sample.In(0, 1, 8), default);
        var boards = sample.Plan.Boards.Select(board => board.BoardId != "K7M" ? board : board with
        {
            Pieces = [.. board.Pieces.Select(piece => piece switch
            {
                PartPiece part => part with { Loss = new Loss(Sample.In(0, 3, 64), Sample.In(0, 1, 32)) },
                LeftoverPiece leftover => leftover with { Ends = new Ends(EndState.Sound, EndState.Checked) },
                _ => piece,
            })],
        });
        var text = Page(sample with
        {
            Plan = sample.Plan with { Boards = [.. boards] },
            Problem = sample.Problem with
            {
                Stock = [.. sample.Problem.Stock.Select(board => board.Id != "K7M" ? board : board with { Warp = warp, Ends = new Ends(EndState.Checked, EndState.Checked), Batch = "log <3>" })],
            },
        }).Value;
        Assert.Contains("flatten: 3/64\" counted for bow and cup; sawn 1/32\" wider for crook", text, StringComparison.Ordinal);
        Assert.Contains("log it, back to the rack; ends: left sound, right checked", text, StringComparison.Ordinal);
        Assert.Contains("warped: bow 1/2\", cup 1/8\"; ends: checked; batch log <3>", text, StringComparison.Ordinal);
    }

    private static XElement Page(PlanDocument document)
    {
        using var reader = XmlReader.Create(
            new StringReader(CutSheet.Html(document).Replace('\u00A0', ' ')), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XElement.Load(reader);
    }
}
