using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

// A small shop over HTTP: logs boards, makes plans, and builds them. Every plan is of the real planner.
internal sealed class Shop(Service service)
{
    public const string Ash = """{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400,"place":"rack 2","batch":"log 3","ends":{"left":"checked","right":"sound"}}""";

    private const string Offers = """
        [{"id":"hill-yard/ash","supplier":"hill-yard","supplierName":"Hill Yard","species":"white-ash","thicknessMm":25.4,"name":null,"kind":"solid","surface":"rough","appearance":"clear",
          "byVolume":{"widthsMm":[152.4],"lengthsMm":[1828.8],"price":6.2,"unit":"board-foot"} }]
        """;

    public async Task<string> LogAsync(string board = Ash, int quantity = 1) => (await Service.ReadAsync(
        await service.SendAsync("POST", "/v1/boards", board.Replace("{\"species", $$"""{"quantity":{{quantity.ToString(CultureInfo.InvariantCulture)}},"species""", StringComparison.Ordinal)),
        HttpStatusCode.Created)).GetProperty("id").GetString()!;

    // Rails that each take a board of the kind above: none has room beside another, nor behind it if they are longer than half of it.
    public async Task<JsonElement> PlanAsync(int rails, bool buying = false, int length = 900, JsonElement? from = null) => await Service.ReadAsync(
        await service.SendAsync(
            "POST", "/v1/plans",
            string.Create(CultureInfo.InvariantCulture, $$"""
                {"budgetMs":5000,"from":{{(from is { } earlier ? $"\"{Id(earlier)}\"" : "null")}},"inline":{"offers":{{(buying ? Offers : "[]")}},
                 "design":{"name":"Rails","parts":[{"name":"rail","quantity":{{rails}},"thicknessMm":19.05,"widthMm":100,"lengthMm":{{length}},"species":["white-ash"]}] } } }
                """),
            prefer: "wait=20"),
        HttpStatusCode.Created);

    public Task<HttpResponseMessage> AcceptAsync(JsonElement plan) => service.SendAsync("POST", $"/v1/plans/{Id(plan)}/acceptance");

    public Task<HttpResponseMessage> ReleaseAsync(JsonElement plan) => service.SendAsync("POST", $"/v1/plans/{Id(plan)}/release");

    public Task<HttpResponseMessage> CloseAsync(JsonElement plan, string said = "{}") => service.SendAsync("POST", $"/v1/plans/{Id(plan)}/closings", said);

    public async Task<JsonElement> BoardAsync(string id) => await service.GetAsync($"/v1/boards/{id}");

    public async Task<JsonElement> BuildAsync(JsonElement plan) => (await service.GetAsync($"/v1/plans/{Id(plan)}")).GetProperty("build");

    public async Task<long> NewestLineAsync() => (await service.GetAsync("/v1/journal?limit=1")).GetProperty("items")[0].GetProperty("line").GetInt64();

    public Task<HttpResponseMessage> UndoAsync(long line) => service.SendAsync("POST", string.Create(CultureInfo.InvariantCulture, $"/v1/journal/{line}/undo"));

    public async Task AssertBooksAgreeAsync()
    {
        var check = await service.GetAsync("/v1/journal/check");
        Assert.True(check.GetProperty("agrees").GetBoolean(), check.GetRawText());
    }

    public static string Id(JsonElement plan) => plan.GetProperty("id").GetString()!;

    public static IEnumerable<JsonElement> Boards(JsonElement plan) => plan.GetProperty("plan").GetProperty("boards").EnumerateArray();

    public static async Task<string> ConflictAsync(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        return (await Service.ProblemAsync(answer)).GetProperty("detail").GetString()!;
    }
}
