using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class KeepRuleEndpointsTests : OwnService
{
    private const string Rule = """
        unit: in
        rule:
          - never: softwood
          - always: walnut
            at least: {width: 1}
          - keep: hardwood
            at least: [{length: 16, width: 4}, {length: 36, section: 1 1/4}]
        """;

    [Fact]
    public async Task A_rule_is_read_as_it_was_written_and_its_answers_follow_it()
    {
        var none = await Service.GetAsync("/v1/keep-rule");
        Assert.Equal(0, none.GetProperty("entries").GetArrayLength());
        Assert.Equal("Otherwise keep what is at least 1/4 x 2 x 12 in.", none.GetProperty("text")[0].GetString());

        var set = await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/keep-rule", Rule, "application/yaml"), HttpStatusCode.OK);
        Assert.Equal(set.GetRawText(), (await Service.GetAsync("/v1/keep-rule")).GetRawText());
        Assert.Equal(["softwood"], set.GetProperty("entries")[0].GetProperty("species").EnumerateArray().Select(word => word.GetString()));
        Assert.Equal("Never keep softwood.", set.GetProperty("text")[0].GetString());
        Assert.Equal("Keep hardwood from 16\" long and 4\" wide or from 36\" long and 1.25 sq in in section, and nothing smaller.", set.GetProperty("text")[2].GetString());
        // What is read may be sent back.
        var again = await Service.ReadAsync(
            await Service.SendAsync("PUT", "/v1/keep-rule", $$"""{"entries":{{set.GetProperty("entries").GetRawText()}}}"""), HttpStatusCode.OK);
        Assert.Equal(set.GetRawText(), again.GetRawText());

        await Answers("3/4 x 2 x 14 walnut", true, 2, "rule 2 always keeps black walnut from 1\" wide");
        await Answers("3/4 x 2 x 14 ash", false, 3, "rule 3 keeps hardwood only from 16\" long and 4\" wide or from 36\" long and 1.25 sq in in section; it is 14\" long");
        await Answers("2x4 x 8ft doug fir", false, 1, "rule 1 lets softwood go, whatever its size");
        await Answers(
            "3/4 x 5 x 20 ash, split 5in end", false, 3,
            "rule 3 keeps hardwood only from 16\" long and 4\" wide or from 36\" long and 1.25 sq in in section; it is 15\" long, counting what its defects leave clear");
        await Answers(
            "3/4 x 5 x 20 ash, knot 18..19 x 0..1/2", true, 3,
            "rule 3 keeps hardwood from 16\" long and 4\" wide or from 36\" long and 1.25 sq in in section, counting what its defects leave clear");
        await Answers("3/4 x 12 x 12 birch ply", true, 0, "the shop keeps what is at least 12\" long, 2\" wide and 1/4\" thick");
    }

    [Theory]
    [InlineData("?piece=ash", "?piece")]
    [InlineData("?piece=3/4%20x%202%20x%2014%20wallnut", "?piece")]
    [InlineData("", "?piece")]
    [InlineData("?piece=3/4%20x%202%20x%2014%20ash&unit=in", "?unit")]
    public async Task What_is_no_piece_is_told(string query, string pointer)
    {
        var answer = await Service.SendAsync("GET", $"/v1/keep-rule/answer{query}");
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    [Theory]
    [InlineData("""{"entries":[{"word":"perhaps"}]}""", "#/entries/0/word")]
    [InlineData("""{"entries":[{"word":"keep"}]}""", "#/entries/0/sizes")]
    [InlineData("""{"entries":[{"word":"never","species":[]}]}""", "#/entries/0/species")]
    [InlineData("""{"entries":[{"word":"never","species":["wallnut"]}]}""", "#/entries/0/species/0")]
    [InlineData("""{"entries":[{"word":"keep","sizes":[{}]}]}""", "#/entries/0/sizes/0")]
    [InlineData("""{"entries":[{"word":"keep","sizes":[{"lengthMm":-1}]}]}""", "#/entries/0/sizes/0/lengthMm")]
    [InlineData("""{"entries":[{"word":"keep","sizes":[{"sectionMm2":0}]}]}""", "#/entries/0/sizes/0/sectionMm2")]
    [InlineData("""{}""", "#")]
    public async Task A_wrong_rule_is_refused_with_the_place_named(string json, string pointer)
    {
        var answer = await Service.SendAsync("PUT", "/v1/keep-rule", json);
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
        Assert.Equal(0, (await Service.GetAsync("/v1/keep-rule")).GetProperty("entries").GetArrayLength());
    }

    [Fact]
    public async Task Plans_and_closings_keep_what_the_rule_keeps_and_a_class_means_what_is_in_it_then()
    {
        await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/keep-rule", """
            rule:
              - always: hardwood
                at least: {length: 10in}
            """, "application/yaml"), HttpStatusCode.OK);
        await Service.SendAsync("POST", "/v1/species", """{"id":"orchard-plum","name":"plum","classes":["hardwood"]}""");
        // 20 in less 8 1/2 of blank and 1/8 of kerf leave 11 3/8 in: below the keep size, and kept by the rule.
        await Service.ReadAsync(await Service.SendAsync(
            "POST", "/v1/boards", """{"species":"plum","thicknessMm":19.05,"widthMm":104.775,"lengthMm":508,"surface":"surfaced"}"""), HttpStatusCode.Created);
        var run = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", """
            {"budgetMs":2000,"inline":{"offers":[],"design":{"name":"Rail","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":101.6,"lengthMm":203.2,"species":["orchard-plum"]}]}}}
            """, prefer: "wait=15"), HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", $"{run}");
        Assert.Equal(288.925m, Leftovers(run).Single().GetProperty("lengthMm").GetDecimal());
        var id = run.GetProperty("id").GetString();

        // The rule is part of what the plan was made from: another rule does not change it, and the problem may be sent back.
        await Service.SendAsync("PUT", "/v1/keep-rule", """{"entries":[{"word":"never"}]}""");
        var problem = await Service.GetAsync($"/v1/plans/{id}/problem");
        Assert.Contains("orchard-plum", problem.GetProperty("keepRule").GetProperty("entries")[0].GetProperty("species").EnumerateArray().Select(word => word.GetString()));
        var again = await Service.ReadAsync(
            await Service.SendAsync("POST", "/v1/plans", $$"""{"budgetMs":2000,"inline":{{problem.GetRawText()}}}""", prefer: "wait=15"), HttpStatusCode.Created);
        Assert.Single(Leftovers(again));
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{id}/acceptance"), HttpStatusCode.OK);
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{id}/closings", """{"boards":[{"number":1}]}"""), HttpStatusCode.OK);
        Assert.Single((await Service.GetAsync("/v1/boards?status=free")).GetProperty("items").EnumerateArray());
    }

    private static List<JsonElement> Leftovers(JsonElement run) =>
        [.. run.GetProperty("plan").GetProperty("boards")[0].GetProperty("pieces").EnumerateArray().Where(piece => piece.GetProperty("kind").GetString() == "leftover")];

    private async Task Answers(string piece, bool isKept, int rule, string reason)
    {
        var answer = await Service.GetAsync($"/v1/keep-rule/answer?piece={Uri.EscapeDataString(piece)}");
        Assert.Equal((isKept, rule, reason), (answer.GetProperty("keep").GetBoolean(), answer.GetProperty("rule").GetInt32(), answer.GetProperty("reason").GetString()));
    }
}
