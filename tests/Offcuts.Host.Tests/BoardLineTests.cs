using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class BoardLineTests : OwnService
{
    [Fact]
    public async Task Lines_are_logged_and_told_back_in_words_with_what_carries_on()
    {
        var result = await Service.ReadAsync(await LogAsync("3 @ 3/4 x 5 1/2 x 36 ash, rack 2\n\n# a remark\r\n4/4 x 7 x ~62 walnut, split 3in end\n5/4 x 3 x 20"), HttpStatusCode.Created);

        Assert.True(result.GetProperty("logged").GetBoolean());
        var lines = result.GetProperty("lines").EnumerateArray().ToList();
        Assert.Equal([1, 4, 5], lines.Select(line => line.GetProperty("line").GetInt32()));
        Assert.Equal("3 of white ash, rough, 3/4 x 5 1/2 x 36 in, place rack 2", lines[0].GetProperty("understood").GetString());
        var walnut = lines[1].GetProperty("board");
        Assert.True(walnut.GetProperty("estimated").GetProperty("length").GetBoolean());
        Assert.Equal("black-walnut", result.GetProperty("carry").GetProperty("species").GetString());
        var boards = (await Service.GetAsync("/v1/boards")).GetProperty("items").EnumerateArray().ToList();
        Assert.Equal([3, 1, 1], boards.Select(board => board.GetProperty("quantity").GetInt32()));
        Assert.Equal(walnut.ToString(), boards[1].ToString());
        Assert.All(boards, board => Assert.Equal("rack 2", board.GetProperty("place").GetString()));
    }

    [Fact]
    public async Task One_line_that_is_not_understood_keeps_all_from_being_logged_and_says_where()
    {
        var answer = await LogAsync("3 @ 3/4 x 5 1/2 x 36 ash\n4/4 rouhg x 7 x 62 walnut\n4/4 x 7 walnut");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var faults = (await Service.ProblemAsync(answer)).GetProperty("errors").EnumerateArray()
            .Select(fault => (fault.GetProperty("pointer").GetString(), fault.GetProperty("line").GetInt32(), fault.GetProperty("column").GetInt32()));
        Assert.Equal([("#/text", 2, 5), ("#/text", 3, 15)], faults);
        Assert.Empty((await Service.GetAsync("/v1/boards")).GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task A_dry_run_tells_every_line_and_logs_nothing()
    {
        var result = await Service.ReadAsync(await LogAsync("3 @ 3/4 x 5 1/2 x 36 ash\n4/4 rouhg x 7 x 62 walnut", dryRun: true), HttpStatusCode.OK);

        Assert.False(result.GetProperty("logged").GetBoolean());
        var lines = result.GetProperty("lines").EnumerateArray().ToList();
        Assert.StartsWith("3 of white ash", lines[0].GetProperty("understood").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, lines[0].GetProperty("board").ValueKind);
        Assert.Equal(JsonValueKind.Null, lines[1].GetProperty("understood").ValueKind);
        Assert.Equal(5, lines[1].GetProperty("faults")[0].GetProperty("column").GetInt32());
        Assert.Empty((await Service.GetAsync("/v1/boards")).GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task What_carries_on_can_be_given_with_the_request()
    {
        var answer = await Service.SendAsync("POST", "/v1/board-lines", """{"text":"4/4 x 5 x 30","carry":{"species":"cherry","place":"rack 9","batch":"log 1"}}""");
        var board = (await Service.ReadAsync(answer, HttpStatusCode.Created)).GetProperty("lines")[0].GetProperty("board");
        Assert.Equal(("black-cherry", "rack 9", "log 1"), (board.GetProperty("species").GetString(), board.GetProperty("place").GetString(), board.GetProperty("batch").GetString()));
        Assert.Equal("#/carry/species", await Service.PointerAsync(await Service.SendAsync("POST", "/v1/board-lines", """{"text":"4/4 x 5 x 30","carry":{"species":"chery"}}""")));
    }

    [Fact]
    public async Task Beginnings_mean_what_is_on_the_rack_and_places_are_known()
    {
        await LogAsync("4/4 x 5 x 30 white oak, place stair nook");
        var result = await Service.ReadAsync(await LogAsync("4/4 x 6 x 31 oak stair nook"), HttpStatusCode.Created);
        Assert.Equal("white oak, rough, 1 x 6 x 31 in, place stair nook", result.GetProperty("lines")[0].GetProperty("understood").GetString());
    }

    [Fact]
    public async Task Too_many_lines_are_a_fault_and_no_lines_log_nothing()
    {
        Assert.Equal(HttpStatusCode.BadRequest, (await LogAsync(string.Concat(Enumerable.Repeat("\n", 1000)))).StatusCode);
        var none = await Service.ReadAsync(await LogAsync("\n# nothing\n"), HttpStatusCode.Created);
        Assert.Empty(none.GetProperty("lines").EnumerateArray());
    }

    [Fact]
    public async Task An_estimate_is_kept_through_a_plans_stored_problem()
    {
        await LogAsync("4/4 x 5 x ~40 ash");
        var plan = await Service.ReadAsync(
            await Service.SendAsync(
                "POST", "/v1/plans",
                """{"budgetMs":2000,"inline":{"offers":[],"design":{"name":"Rail","parts":[{"name":"rail","quantity":1,"thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}}}""",
                prefer: "wait=15"),
            HttpStatusCode.Created);
        Assert.Contains("estimated", plan.GetProperty("plan").GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()));
        Assert.Equal(39 * 25.4m, plan.GetProperty("plan").GetProperty("boards")[0].GetProperty("size").GetProperty("lengthMm").GetDecimal());
        var stock = (await Service.GetAsync($"/v1/plans/{plan.GetProperty("id").GetString()}/problem")).GetProperty("stock")[0];
        Assert.Equal(40 * 25.4m, stock.GetProperty("lengthMm").GetDecimal());
        Assert.True(stock.GetProperty("estimated").GetProperty("length").GetBoolean());
    }

    private Task<HttpResponseMessage> LogAsync(string text, bool dryRun = false) =>
        Service.SendAsync("POST", "/v1/board-lines", JsonSerializer.Serialize(new { text, dryRun }));
}
