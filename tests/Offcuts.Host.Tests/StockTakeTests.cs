using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class StockTakeTests : OwnService
{
    [Fact]
    public async Task A_place_is_walked_through_and_no_other_place_is_touched()
    {
        var here = await LogAsync("rack 2", "rack 2", "rack 2", "rack 2");
        var elsewhere = await LogAsync("bin", "loft", null);
        var untouched = await StatesAsync(elsewhere[1], elsewhere[2]);
        var take = await StartAsync("rack 2");
        Assert.Equal(here, Unseen(await TakeAsync(take)));

        var confirmed = await StepAsync(take, $$"""{"confirm":"{{here[0].ToLowerInvariant()}}"}""");
        Assert.Equal(("confirmed", JsonValueKind.Null, 3), (confirmed.GetProperty("finding").GetString(), confirmed.GetProperty("journalLine").ValueKind, confirmed.GetProperty("unseen").GetInt32()));
        var corrected = await StepAsync(take, $$$"""{"correct":{"id":"{{{here[1]}}}","board":{"species":"white-ash","thicknessMm":25,"widthMm":100,"lengthMm":800} } }""");
        Assert.Equal(("corrected", 800m, "rack 2"), (corrected.GetProperty("finding").GetString(), Board(corrected).GetProperty("lengthMm").GetDecimal(), Board(corrected).GetProperty("place").GetString()));
        var struck = await StepAsync(take, $$"""{"strike":"{{here[2]}}"}""");
        Assert.Equal(("struck", "gone"), (struck.GetProperty("finding").GetString(), Board(struck).GetProperty("status").GetString()));
        var added = await StepAsync(take, """{"line":"3/4 x 5 1/2 x 36 cherry"}""");
        Assert.Equal(("added", "rack 2", "black-cherry"), (added.GetProperty("finding").GetString(), Board(added).GetProperty("place").GetString(), added.GetProperty("carry").GetProperty("species").GetString()));
        // It belongs to the bin by the book, but is found here.
        var moved = await StepAsync(take, $$"""{"confirm":"{{elsewhere[0]}}"}""");
        Assert.Equal(("moved", "rack 2"), (moved.GetProperty("finding").GetString(), Board(moved).GetProperty("place").GetString()));

        Assert.Equal([here[3]], Unseen(await TakeAsync(take)));
        var refused = await Service.SendAsync("POST", $"/v1/stock-takes/{take}/finish", "{}");
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains($"Board {here[3]} is not seen yet", (await Service.ProblemAsync(refused)).GetProperty("detail").GetString()!, StringComparison.Ordinal);
        var finished = await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/stock-takes/{take}/finish", """{"unseen":"strike"}"""), HttpStatusCode.OK);
        Assert.Equal(
            ["added", "confirmed", "corrected", "moved", "struck", "struck"],
            finished.GetProperty("seen").EnumerateArray().Select(seen => seen.GetProperty("finding").GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal("gone", (await BoardAsync(here[3])).GetProperty("status").GetString());
        Assert.Equal(untouched, await StatesAsync(elsewhere[1], elsewhere[2]));

        // Each change is a line that names the stock-take; what was only seen is none.
        var lines = (await Service.GetAsync("/v1/journal")).GetProperty("items").EnumerateArray()
            .Where(line => line.GetProperty("stockTake").ValueKind == JsonValueKind.Number).Select(line => line.GetProperty("kind").GetString());
        Assert.Equal(["edit", "edit", "log", "edit", "edit"], lines);
        var told = (await Service.GetAsync($"/v1/boards/{here[1]}/history")).GetProperty("items")[1].GetProperty("text").GetString()!;
        Assert.StartsWith("changed in stock-take 1: ", told, StringComparison.Ordinal);
        Assert.True((await Service.GetAsync("/v1/journal/check")).GetProperty("agrees").GetBoolean());
    }

    [Fact]
    public async Task It_is_gone_on_with_after_a_restart_and_one_that_is_finished_takes_no_steps()
    {
        var here = await LogAsync("bin", "bin");
        var take = await StartAsync("bin");
        await StepAsync(take, $$"""{"confirm":"{{here[0]}}"}""");
        await Service.StopAsync();
        await Service.StartAsync();
        var again = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/stock-takes", """{"place":"bin"}"""), HttpStatusCode.OK);
        Assert.Equal((take, here[1]), (again.GetProperty("number").GetInt64(), Assert.Single(Unseen(again))));

        var finished = await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/stock-takes/{take}/finish", """{"unseen":"leave"}"""), HttpStatusCode.OK);
        Assert.Equal(["confirmed", "left"], finished.GetProperty("seen").EnumerateArray().Select(seen => seen.GetProperty("finding").GetString()!));
        Assert.Equal("free", (await BoardAsync(here[1])).GetProperty("status").GetString());
        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", $"/v1/stock-takes/{take}/steps", $$"""{"confirm":"{{here[1]}}"}""")).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", $"/v1/stock-takes/{take}/finish", "{}")).StatusCode);
        // What is logged there later is no part of it.
        await LogAsync("bin");
        Assert.Empty(Unseen(await TakeAsync(take)));

        Assert.Equal(take + 1, await StartAsync("bin"));
        var open = Assert.Single((await Service.GetAsync("/v1/stock-takes?state=open")).GetProperty("items").EnumerateArray());
        Assert.Equal(take + 1, open.GetProperty("number").GetInt64());
        var page = await Service.GetAsync("/v1/stock-takes?limit=1");
        Assert.Equal(take, Assert.Single((await Service.GetAsync($"/v1/stock-takes?limit=1&cursor={page.GetProperty("next").GetString()}")).GetProperty("items").EnumerateArray()).GetProperty("number").GetInt64());
    }

    [Fact]
    public async Task What_is_taken_back_in_the_journal_is_unseen_again()
    {
        var here = await LogAsync("bin", "bin");
        var take = await StartAsync("bin");
        var struck = await StepAsync(take, $$"""{"strike":"{{here[0]}}"}""");
        await StepAsync(take, $$"""{"confirm":"{{here[1]}}"}""");
        Assert.Empty(Unseen(await TakeAsync(take)));

        var undo = await UndoAsync(struck.GetProperty("journalLine").GetInt64());
        Assert.Equal([here[0]], Unseen(await TakeAsync(take)));
        // Taken back itself, the line stands again.
        await UndoAsync(undo);
        Assert.Empty(Unseen(await TakeAsync(take)));
        Assert.Equal("gone", (await BoardAsync(here[0])).GetProperty("status").GetString());

        await StepAsync(take, $$"""{"forget":"{{here[1]}}"}""");
        Assert.Equal([here[1]], Unseen(await TakeAsync(take)));
        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", $"/v1/stock-takes/{take}/steps", $$"""{"forget":"{{here[1]}}"}""")).StatusCode);
        // What was struck off turns up after all.
        var found = await StepAsync(take, $$"""{"confirm":"{{here[0]}}"}""");
        Assert.Equal(("moved", "free"), (found.GetProperty("finding").GetString(), Board(found).GetProperty("status").GetString()));
    }

    [Fact]
    public async Task What_a_plan_holds_may_be_seen_and_moved_but_not_struck_off()
    {
        var ids = await LogAsync("bin");
        const string Rail = """{"budgetMs":2000,"inline":{"offers":[],"design":{"name":"Rail","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}}}""";
        var plan = (await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", Rail, prefer: "wait=15"), HttpStatusCode.Created)).GetProperty("id").GetString();
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{plan}/acceptance"), HttpStatusCode.OK);
        var take = await StartAsync("bin");
        Assert.Equal(ids, Unseen(await TakeAsync(take)));
        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", $"/v1/stock-takes/{take}/steps", $$"""{"strike":"{{ids[0]}}"}""")).StatusCode);
        var held = await Service.SendAsync("POST", $"/v1/stock-takes/{take}/finish", """{"unseen":"strike"}""");
        Assert.Equal(HttpStatusCode.Conflict, held.StatusCode);
        Assert.Contains(plan!, (await Service.ProblemAsync(held)).GetProperty("detail").GetString()!, StringComparison.Ordinal);
        Assert.Equal(ids, Unseen(await TakeAsync(take)));

        var other = await StartAsync("loft");
        Assert.Equal("moved", (await StepAsync(other, $$"""{"confirm":"{{ids[0]}}"}""")).GetProperty("finding").GetString());
        Assert.Equal(("reserved", "loft"), (await BoardAsync(ids[0]) is var board ? (board.GetProperty("status").GetString(), board.GetProperty("place").GetString()) : default));
        Assert.Empty(Unseen(await TakeAsync(take)));
    }

    [Fact]
    public async Task What_lies_elsewhere_is_not_struck_off()
    {
        var ids = await LogAsync("bin", "loft", null);
        var take = await StartAsync("bin");
        foreach (var id in ids[1..])
        {
            var refused = await Service.SendAsync("POST", $"/v1/stock-takes/{take}/steps", $$"""{"strike":"{{id}}"}""");
            Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
            Assert.Equal("free", (await BoardAsync(id)).GetProperty("status").GetString());
        }
    }

    [Theory]
    [InlineData("""{}""", "#")]
    [InlineData("""{"confirm":"A","strike":"A"}""", "#")]
    [InlineData("""{"line":"3/4 x 5 1/2 x 36 wallnut"}""", "#/line")]
    [InlineData("""{"line":"3/4 x 5 1/2 x 36 ash, rack 9"}""", "#/line")]
    [InlineData("""{"line":"3/4 x 5 1/2 ash"}""", "#/line")]
    [InlineData("""{"line":"3/4 x 5 x 36","carry":{"species":"wallnut"}}""", "#/carry/species")]
    [InlineData("""{"correct":{"id":"K7M","board":{"species":"white-ash","thicknessMm":25,"widthMm":0,"lengthMm":800}}}""", "#/correct/board/widthMm")]
    public async Task A_step_that_is_none_is_refused_with_the_place_named(string step, string pointer)
    {
        var take = await StartAsync("bin");
        var answer = await Service.SendAsync("POST", $"/v1/stock-takes/{take}/steps", step);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
        Assert.Empty((await Service.GetAsync("/v1/boards")).GetProperty("items").EnumerateArray());
    }

    [Theory]
    [InlineData("POST", "/v1/stock-takes", """{"place":" "}""", HttpStatusCode.BadRequest)]
    [InlineData("POST", "/v1/stock-takes", """{"place":"rack 2"}""", HttpStatusCode.NotFound)]
    [InlineData("POST", "/v1/stock-takes/7/steps", """{"confirm":"K7M"}""", HttpStatusCode.NotFound)]
    [InlineData("POST", "/v1/stock-takes/one/finish", "{}", HttpStatusCode.NotFound)]
    [InlineData("GET", "/v1/stock-takes/7", null, HttpStatusCode.NotFound)]
    [InlineData("GET", "/v1/stock-takes?state=lost", null, HttpStatusCode.BadRequest)]
    public async Task What_is_not_there_or_cannot_be_is_refused(string method, string path, string? body, HttpStatusCode status) =>
        Assert.Equal(status, (await Service.SendAsync(method, path, body)).StatusCode);

    private static JsonElement Board(JsonElement step) => step.GetProperty("board");

    private static IEnumerable<string> Unseen(JsonElement take) => take.GetProperty("unseen").EnumerateArray().Select(board => board.GetProperty("id").GetString()!);

    private Task<JsonElement> TakeAsync(long number) => Service.GetAsync(string.Create(CultureInfo.InvariantCulture, $"/v1/stock-takes/{number}"));

    private Task<JsonElement> BoardAsync(string id) => Service.GetAsync($"/v1/boards/{id}");

    private async Task<string> StatesAsync(params string[] ids)
    {
        var states = new List<string>();
        foreach (var id in ids)
        {
            states.Add((await BoardAsync(id)).GetRawText());
        }

        return string.Join('\n', states);
    }

    private async Task<long> StartAsync(string place) => (await Service.ReadAsync(
        await Service.SendAsync("POST", "/v1/stock-takes", JsonSerializer.Serialize(new { place, newPlace = true })), HttpStatusCode.Created)).GetProperty("number").GetInt64();

    private async Task<JsonElement> StepAsync(long take, string step) => await Service.ReadAsync(
        await Service.SendAsync("POST", string.Create(CultureInfo.InvariantCulture, $"/v1/stock-takes/{take}/steps"), step), HttpStatusCode.OK);

    private async Task<long> UndoAsync(long line) => (await Service.ReadAsync(
        await Service.SendAsync("POST", string.Create(CultureInfo.InvariantCulture, $"/v1/journal/{line}/undo")), HttpStatusCode.OK)).GetProperty("line").GetInt64();

    private async Task<List<string>> LogAsync(params string?[] places)
    {
        var items = places.Select(place => new { species = "white-ash", thicknessMm = 25, widthMm = 100, lengthMm = 900, place });
        var made = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/board-imports", JsonSerializer.Serialize(new { items })), HttpStatusCode.Created);
        return [.. made.GetProperty("items").EnumerateArray().Select(board => board.GetProperty("id").GetString()!)];
    }
}
