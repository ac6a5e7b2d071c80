using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class PlaceEndpointsTests : OwnService
{
    [Fact]
    public async Task A_place_is_set_shown_changed_and_forgotten_and_its_boards_stay()
    {
        var first = await Service.SendAsync("PUT", "/v1/places/rack%202", """{"reach":"behind","limitM3":0.25,"note":"mind the step"}""");
        var set = await Service.ReadAsync(first, HttpStatusCode.Created);
        Assert.Equal("/v1/places/rack%202", first.Headers.Location!.OriginalString);
        Assert.Equal("""{"name":"rack 2","reach":"behind","limitM3":0.25,"note":"mind the step","isSet":true,"boards":0,"volumeM3":0}""", set.GetRawText());
        await LogAsync("rack 2", quantity: 3);

        var shown = await Service.GetAsync("/v1/places/rack%202");
        // 25 x 100 x 1000 mm are 0.0025 cubic metres.
        Assert.Equal((3, 0.0075m), (shown.GetProperty("boards").GetInt32(), shown.GetProperty("volumeM3").GetDecimal()));
        var changed = await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/places/rack%202", "{}"), HttpStatusCode.OK);
        Assert.Equal("easy", changed.GetProperty("reach").GetString());
        Assert.Equal(JsonValueKind.Null, changed.GetProperty("limitM3").ValueKind);

        Assert.Equal(HttpStatusCode.NoContent, (await Service.SendAsync("DELETE", "/v1/places/rack%202")).StatusCode);
        Assert.False((await Service.GetAsync("/v1/places/rack%202")).GetProperty("isSet").GetBoolean());
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("DELETE", "/v1/places/rack%202")).StatusCode);
    }

    [Fact]
    public async Task The_list_has_what_was_set_and_what_boards_name_that_lie_there()
    {
        await Service.SendAsync("PUT", "/v1/places/loft", """{"reach":"buried"}""");
        await LogAsync("bin", 2);
        var gone = await LogAsync("attic", 1);
        await Service.SendAsync("PUT", $"/v1/boards/{gone}", """{"species":"white-ash","thicknessMm":25,"widthMm":100,"lengthMm":1000,"status":"gone","place":"attic"}""");
        await LogAsync(null, 1);
        var items = (await Service.GetAsync("/v1/places")).GetProperty("items").EnumerateArray()
            .Select(place => $"{place.GetProperty("name")} {place.GetProperty("reach")} {place.GetProperty("boards")} {place.GetProperty("isSet")}");
        Assert.Equal(["bin easy 2 False", "loft buried 0 True"], items);
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("GET", "/v1/places/attic")).StatusCode);
    }

    [Theory]
    [InlineData("by the door/left", "by%20the%20door%2Fleft")]
    [InlineData("Brücke 7 %", "Br%C3%BCcke%207%20%25")]
    public async Task A_place_may_have_any_name(string name, string escaped)
    {
        var set = await Service.ReadAsync(await Service.SendAsync("PUT", $"/v1/places/{escaped}", """{"reach":"behind"}"""), HttpStatusCode.Created);
        Assert.Equal(name, set.GetProperty("name").GetString());
        Assert.Equal(set.GetRawText(), (await Service.GetAsync($"/v1/places/{escaped}")).GetRawText());
    }

    [Theory]
    [InlineData("""{"reach":"far"}""", "#/reach")]
    [InlineData("""{"limitM3":0}""", "#/limitM3")]
    [InlineData("""{"limitM3":-1}""", "#/limitM3")]
    [InlineData("""{"limitM3":10001}""", "#/limitM3")]
    [InlineData("""{"limitM3":0.0000000001}""", "#/limitM3")]
    [InlineData("""{"reach":null}""", "#/reach")]
    [InlineData("""{"size":1}""", "#/size")]
    public async Task What_cannot_be_is_refused_with_the_place_named(string body, string pointer)
    {
        var answer = await Service.SendAsync("PUT", "/v1/places/bin", body);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
        Assert.Empty((await Service.GetAsync("/v1/places")).GetProperty("items").EnumerateArray());
    }

    [Fact]
    public async Task A_plan_heeds_reach_says_it_and_can_be_made_again_from_its_problem()
    {
        const string Rail = """{"name":"Rail","parts":[{"name":"rail","thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}""";
        var hard = await LogAsync("loft", 1);
        await LogAsync("loft", 1, length: 3000);
        await Service.SendAsync("PUT", "/v1/places/loft", """{"reach":"buried"}""");
        await Service.SendAsync("PUT", "/v1/places/bin", """{"reach":"easy"}""");
        var request = $$"""{"budgetMs":2000,"inline":{"offers":[],"design":{{Rail}} } }""";
        var dug = await PlanAsync(request);
        Assert.Equal((hard, "loft", "buried"), (dug.GetProperty("boardId").GetString(), dug.GetProperty("place").GetString(), dug.GetProperty("reach").GetString()));

        var easy = await LogAsync("bin", 1);
        var second = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", request, prefer: "wait=15"), HttpStatusCode.Created);
        var taken = Assert.Single(second.GetProperty("plan").GetProperty("boards").EnumerateArray());
        Assert.Equal((easy, JsonValueKind.Null), (taken.GetProperty("boardId").GetString(), taken.GetProperty("reach").ValueKind));

        var problem = await Service.GetAsync($"/v1/plans/{second.GetProperty("id").GetString()}/problem");
        Assert.Equal("""[{"place":"loft","reach":"buried"}]""", problem.GetProperty("places").GetRawText());
        // What the problem says counts, not what the place is by now.
        await Service.SendAsync("DELETE", "/v1/places/loft");
        await Service.SendAsync("PUT", "/v1/places/bin", """{"reach":"buried"}""");
        Assert.Equal(easy, (await PlanAsync($$"""{"budgetMs":2000,"inline":{{problem.GetRawText()}} }""")).GetProperty("boardId").GetString());
        Assert.Equal(hard, (await PlanAsync(request)).GetProperty("boardId").GetString());
    }

    [Fact]
    public async Task A_problem_may_not_say_a_place_twice()
    {
        var answer = await Service.SendAsync("POST", "/v1/plans", """
            {"inline":{"stock":[],"offers":[],"design":{"name":"x","parts":[{"name":"rail","thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]},
             "places":[{"place":"loft","reach":"buried"},{"place":"loft","reach":"easy"}]}}
            """);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("#/inline/places/1/place", await Service.PointerAsync(answer));
    }

    private async Task<JsonElement> PlanAsync(string request)
    {
        var run = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", request, prefer: "wait=15"), HttpStatusCode.Created);
        return Assert.Single(run.GetProperty("plan").GetProperty("boards").EnumerateArray());
    }

    private async Task<string> LogAsync(string? place, int quantity, int length = 1000)
    {
        var board = JsonSerializer.Serialize(new { species = "white-ash", thicknessMm = 25, widthMm = 100, lengthMm = length, quantity, place });
        return (await Service.ReadAsync(await Service.SendAsync("POST", "/v1/boards", board), HttpStatusCode.Created)).GetProperty("id").GetString()!;
    }
}
