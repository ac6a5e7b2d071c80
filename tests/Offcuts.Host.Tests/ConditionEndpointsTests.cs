using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Host.Tests;

// Warp, ends, batch and surface on the wire, in the store and through a plan.
public sealed class ConditionEndpointsTests(Service service) : IClassFixture<Service>
{
    private const string Worn = """
        {"species":"black-walnut","thicknessMm":23.8125,"widthMm":152.4,"lengthMm":1800,"surface":"skip-planed","batch":"log 3",
         "warp":{"bowMm":6.35,"crookMm":1.6,"twistMm":3.2},"ends":{"left":"checked","right":"sound"}}
        """;

    [Fact]
    public async Task A_boards_condition_is_kept_as_it_was_entered()
    {
        var board = await Service.ReadAsync(await service.SendAsync("POST", "/v1/boards", Worn), HttpStatusCode.Created);
        var again = await service.GetAsync($"/v1/boards/{board.GetProperty("id").GetString()}");
        Assert.Equal(board.GetRawText(), again.GetRawText());
        Assert.Equal(("skip-planed", "log 3"), (again.GetProperty("surface").GetString(), again.GetProperty("batch").GetString()));
        Assert.Equal("""{"bowMm":6.35,"crookMm":1.6,"cupMm":0,"twistMm":3.2}""", again.GetProperty("warp").GetRawText());
        Assert.Equal("""{"left":"checked","right":"sound"}""", again.GetProperty("ends").GetRawText());

        var listed = await service.GetAsync("/v1/boards?batch=log%203");
        Assert.Contains(listed.GetProperty("items").EnumerateArray(), item => item.GetProperty("id").GetString() == board.GetProperty("id").GetString());
        Assert.Empty((await service.GetAsync("/v1/boards?batch=log")).GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task A_client_that_knows_nothing_of_it_is_served_as_before()
    {
        var board = await Service.ReadAsync(
            await service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900}"""), HttpStatusCode.Created);
        Assert.All(["warp", "ends", "batch"], (string member) => Assert.Equal(JsonValueKind.Null, board.GetProperty(member).ValueKind));
        var shop = await Service.ReadAsync(await service.SendAsync("PUT", "/v1/shop", """{"kerfMm":3.175}"""), HttpStatusCode.OK);
        Assert.Equal((0.79375m, 0m, 0m, 0m), (Of("flatEnoughMm"), Of("endTrimCheckedMm"), Of("endTrimUnknownMm"), Of("factoryEdgeTrimMm")));
        Assert.Equal(3.175m, shop.GetProperty("skipPlaned").GetProperty("thicknessMm").GetDecimal());

        decimal Of(string member) => shop.GetProperty(member).GetDecimal();
    }

    [Theory]
    [InlineData(""","warp":{"bowMm":-1}""", "#/warp/bowMm")]
    [InlineData(""","warp":{"cupMm":60}""", "#/warp/cupMm")]
    [InlineData(""","warp":{"windMm":1}""", "#/warp/windMm")]
    [InlineData(""","ends":{"left":"rotten"}""", "#/ends/left")]
    [InlineData(""","surface":"skip" """, "#/surface")]
    public async Task A_condition_that_cannot_be_is_refused_with_the_place_named(string members, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900""" + members + "}");
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    [Fact]
    public async Task A_moisture_reading_is_kept_with_its_day()
    {
        const string Board = """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900,"moisture":{"percent":8.5MORE}}""";
        var told = await Service.ReadAsync(await service.SendAsync("POST", "/v1/boards", Board.Replace("MORE", ""","on":"2026-03-01" """, StringComparison.Ordinal)), HttpStatusCode.Created);
        Assert.Equal("""{"percent":8.5,"on":"2026-03-01"}""", told.GetProperty("moisture").GetRawText());
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        var untold = await Service.ReadAsync(await service.SendAsync("POST", "/v1/boards", Board.Replace("MORE", "", StringComparison.Ordinal)), HttpStatusCode.Created);
        Assert.Equal(untold.GetRawText(), (await service.GetAsync($"/v1/boards/{untold.GetProperty("id").GetString()}")).GetRawText());
        Assert.InRange(DateOnly.Parse(untold.GetProperty("moisture").GetProperty("on").GetString()!, CultureInfo.InvariantCulture), today, today.AddDays(1));

        // It can be taken back, and each change is in the journal.
        var id = told.GetProperty("id").GetString();
        var none = await Service.ReadAsync(
            await service.SendAsync("PUT", $"/v1/boards/{id}", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900}"""), HttpStatusCode.OK);
        Assert.Equal(JsonValueKind.Null, none.GetProperty("moisture").ValueKind);
        Assert.Contains("moisture changed", (await service.GetAsync($"/v1/boards/{id}/history")).GetRawText(), StringComparison.Ordinal);
        Assert.Equal(0, (await service.GetAsync("/v1/journal/check")).GetProperty("differences").GetArrayLength());
    }

    [Theory]
    [InlineData("""{"percent":0}""", "#/moisture")]
    [InlineData("""{"percent":8.55}""", "#/moisture")]
    [InlineData("""{"percent":8,"on":"2999-01-01"}""", "#/moisture/on")]
    [InlineData("""{"on":"2026-01-01"}""", "#/moisture")]
    public async Task A_reading_that_cannot_be_is_refused_with_the_place_named(string reading, string pointer)
    {
        var answer = await service.SendAsync(
            "POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":900,"moisture":""" + reading + "}");
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    [Fact]
    public async Task A_plan_says_how_its_wide_panels_move_and_what_is_wrong_with_their_boards()
    {
        const string Problem = """
            {"budgetMs":3000,"inline":{"offers":[],"today":"2026-06-01","shop":{"climate":{"lowHumidityPercent":30,"highHumidityPercent":65,"temperatureCelsius":21.1}},
             "stock":[{"id":"A","species":"black-cherry","thicknessMm":25.4,"widthMm":190,"lengthMm":700,"batch":"log 1","moisture":{"percent":8,"on":"2026-05-01"}},
                      {"id":"B","species":"black-cherry","thicknessMm":25.4,"widthMm":190,"lengthMm":700,"batch":"log 2","moisture":{"percent":10.5,"on":"2025-05-01"}}],
             "design":{"name":"Top","panels":[{"name":"Top","thicknessMm":19,"widthMm":320,"lengthMm":600,"widestStripMm":200,"species":["black-cherry"]}]}}}
            """;
        var run = await Service.ReadAsync(await service.SendAsync("POST", "/v1/plans", Problem, prefer: "wait=15"), HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", $"{run}");
        Assert.Equal(
            ["mixed-batches", "stale-readings", "unequal-moisture"],
            run.GetProperty("plan").GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("code").GetString()).Where(code => code != "wide-panel").Order());
        var movement = run.GetProperty("plan").GetProperty("movements")[0];
        Assert.Equal(("Top", false), (movement.GetProperty("name").GetString(), movement.GetProperty("measured").GetBoolean()));
        // 320 mm x 0.00248 x (11.96 - 6.17), by Eq. 4-5 and 13-2 of the Wood Handbook.
        Assert.InRange(movement.GetProperty("shrinksMm").GetDecimal() + movement.GetProperty("growsMm").GetDecimal(), 4.57m, 4.61m);
        Assert.Contains("Movement across the grain", await service.Client.GetStringAsync($"/v1/plans/{run.GetProperty("id").GetString()}/cut-sheet"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_has_no_warp()
    {
        var answer = await service.SendAsync(
            "POST", "/v1/boards", """{"species":"birch ply","thicknessMm":6,"widthMm":600,"lengthMm":900,"warp":{"bowMm":5}}""");
        var fault = (await Service.ProblemAsync(answer)).GetProperty("errors")[0];
        Assert.Equal("#/warp/bowMm", fault.GetProperty("pointer").GetString());
        Assert.Contains("never planed", fault.GetProperty("detail").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_says_what_each_blank_loses_and_how_leftovers_end()
    {
        var run = await PlanAsync();
        var pieces = run.GetProperty("plan").GetProperty("boards")[0].GetProperty("pieces").EnumerateArray().ToList();
        var blank = pieces.Single(piece => piece.GetProperty("kind").GetString() == "part");
        // 450 of 1800 mm keep a sixteenth: 0.5 of 8 mm of bow and 0.1 of 1.6 mm of crook.
        Assert.Equal((450m, 0.5m, 0.1m), (blank.GetProperty("lengthMm").GetDecimal(), blank.GetProperty("lossThicknessMm").GetDecimal(), blank.GetProperty("lossWidthMm").GetDecimal()));
        var leftover = pieces.First(piece => piece.GetProperty("kind").GetString() == "leftover");
        Assert.Equal("""{"left":"sound","right":"sound"}""", leftover.GetProperty("ends").GetRawText());
        var sheet = await service.Client.GetStringAsync($"/v1/plans/{run.GetProperty("id").GetString()}/cut-sheet");
        Assert.Contains("counted for bow", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_was_stored_before_all_this_is_still_shown()
    {
        var id = (await PlanAsync()).GetProperty("id").GetString();
        using (var connection = new SqliteConnection($"Data Source={service.DatabasePath}"))
        {
            foreach (var column in (string[])["plan", "problem"])
            {
                var stored = JsonNode.Parse(connection.QuerySingle<string>($"SELECT {column} FROM plan_runs WHERE id = @Id", new { Id = id }))!;
                Forget(stored);
                connection.Execute($"UPDATE plan_runs SET {column} = @Json WHERE id = @Id", new { Json = stored.ToJsonString(), Id = id });
            }
        }

        var run = await service.GetAsync($"/v1/plans/{id}");
        Assert.Equal("done", run.GetProperty("state").GetString());
        Assert.Contains("rail", await service.Client.GetStringAsync($"/v1/plans/{id}/cut-sheet"), StringComparison.Ordinal);
        Assert.StartsWith("<svg", await service.Client.GetStringAsync($"/v1/plans/{id}/diagrams/1"), StringComparison.Ordinal);
        var problem = await service.GetAsync($"/v1/plans/{id}/problem");
        Assert.Equal(JsonValueKind.Null, problem.GetProperty("stock")[0].GetProperty("warp").ValueKind);
    }

    /// <summary>Takes out, wherever they stand, the members that older versions did not write.</summary>
    private static void Forget(JsonNode? node)
    {
        if (node is JsonObject members)
        {
            foreach (var name in (string[])
                ["warp", "ends", "batch", "moisture", "movements", "climate", "widePanelMm", "readingDays", "lossThicknessMm", "lossWidthMm", "skipPlaned", "flatEnoughMm", "endTrimCheckedMm", "endTrimUnknownMm", "factoryEdgeTrimMm"])
            {
                members.Remove(name);
            }

            foreach (var (_, value) in members)
            {
                Forget(value);
            }
        }

        foreach (var entry in node as JsonArray ?? [])
        {
            Forget(entry);
        }
    }

    private async Task<JsonElement> PlanAsync()
    {
        var answer = await service.SendAsync("POST", "/v1/plans", """
            {"budgetMs":3000,"inline":{"offers":[],"shop":{"rough":{"lengthMm":10,"widthMm":5,"thicknessMm":5},"endTrimCheckedMm":30},
             "stock":[{"id":"A","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1800,"warp":{"bowMm":8,"crookMm":1.6},"ends":{"left":"checked","right":"sound"}}],
             "design":{"name":"Rail","parts":[{"name":"rail","thicknessMm":19,"widthMm":60,"lengthMm":440,"species":["white-ash"]}]}}}
            """, prefer: "wait=15");
        var run = await Service.ReadAsync(answer, HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", string.Create(CultureInfo.InvariantCulture, $"{run}"));
        return run;
    }
}
