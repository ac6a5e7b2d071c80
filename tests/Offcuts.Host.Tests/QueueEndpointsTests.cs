using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// A queue of builds and a plan for all of them, over HTTP and through the store.
public sealed class QueueEndpointsTests : OwnService
{
    [Fact]
    public async Task Builds_are_added_moved_and_removed()
    {
        foreach (var name in new[] { "One", "Two", "Three" })
        {
            await StoreAsync(name, 1);
        }

        await AddAsync("one");
        await AddAsync("two");
        var queue = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/queue", """{"design":"three","position":1}"""), HttpStatusCode.Created);
        Assert.Equal("1 three Three, 2 one One, 3 two Two", Said(queue));
        var moved = await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/queue/{Id(queue, "three")}/moves", """{"position":3}"""), HttpStatusCode.OK);
        Assert.Equal("1 one One, 2 two Two, 3 three Three", Said(moved));
        Assert.Equal(HttpStatusCode.NoContent, (await Service.SendAsync("DELETE", $"/v1/queue/{Id(queue, "one")}")).StatusCode);
        Assert.Equal("1 two Two, 2 three Three", Said(await Service.GetAsync("/v1/queue")));

        // A design that is deleted stays to be taken out.
        await Service.SendAsync("DELETE", "/v1/designs/two");
        Assert.Equal("1 two , 2 three Three", Said(await Service.GetAsync("/v1/queue")));
    }

    [Fact]
    public async Task What_cannot_be_is_refused()
    {
        await StoreAsync("One", 1);
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("POST", "/v1/queue", """{"design":"nothing"}""")).StatusCode);
        Assert.Equal("#/position", await Service.PointerAsync(await Service.SendAsync("POST", "/v1/queue", """{"design":"one","position":0}""")));
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("POST", "/v1/queue/9/moves", """{"position":1}""")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("DELETE", "/v1/queue/x")).StatusCode);
        for (var count = 0; count < 8; count++)
        {
            await AddAsync("one");
        }

        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", "/v1/queue", """{"design":"one"}""")).StatusCode);
        Assert.Equal("#/designs", await Service.PointerAsync(await Service.SendAsync("POST", "/v1/plans", """{"designs":["one"]}""")));
        Assert.Equal("#/design", await Service.PointerAsync(await Service.SendAsync("POST", "/v1/plans", """{"designs":["one","one"],"design":"one"}""")));
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("POST", "/v1/plans", """{"designs":["one","nothing"]}""")).StatusCode);
        const string Stray = """{"inline":{"builds":["A","B"],"design":{"name":"both","parts":[{"name":"A: rail","thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]},{"name":"rail","thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}}}""";
        Assert.Equal("#/inline/builds", await Service.PointerAsync(await Service.SendAsync("POST", "/v1/plans", Stray)));
    }

    [Fact]
    public async Task Designs_are_planned_together_and_the_plan_is_built_like_any_other()
    {
        await StoreAsync("Hall bench", 2);
        await StoreAsync("Tea tray", 1);
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":700}"""), HttpStatusCode.Created);
        await Service.SendAsync("POST", "/v1/price-lists", """
            {"supplier":"Hill Yard","terms":{"delivery":20},"offers":[{"species":"white-ash","thicknessMm":25.4,"byThePiece":{"widthMm":100,"lengthMm":1400,"price":9}}]}
            """);

        var run = await Service.ReadAsync(
            await Service.SendAsync("POST", "/v1/plans", """{"designs":["hall-bench","tea-tray"],"budgetMs":15000}""", prefer: "wait=20"), HttpStatusCode.Created);

        // Three rails: one of the board, two of one bought board; one after another the second build has another delivery or none.
        var plan = run.GetProperty("plan");
        Assert.Equal("Hall bench + Tea tray", run.GetProperty("design").GetProperty("name").GetString());
        Assert.Equal((29m, "proved"), (plan.GetProperty("totalCost").GetDecimal(), plan.GetProperty("status").GetString()));
        var together = plan.GetProperty("together");
        Assert.Equal(["Hall bench 2", "Tea tray 1"], together.GetProperty("builds").EnumerateArray().Select(build => $"{build.GetProperty("name").GetString()} {build.GetProperty("pieces").GetInt32()}"));
        Assert.Equal(9m, together.GetProperty("builds").EnumerateArray().Sum(build => build.GetProperty("woodCost").GetDecimal()));
        Assert.Equal(2, together.GetProperty("oneAfterAnother").GetArrayLength());
        var least = together.GetProperty("oneAfterAnother").EnumerateArray().Min(order => order.GetProperty("totalCost").GetDecimal());
        Assert.Equal(least - 29m, together.GetProperty("saves").GetDecimal());
        Assert.Contains(together.GetProperty("setups").EnumerateArray(), setup => setup.GetProperty("kind").GetString() == "plane" && setup.GetProperty("parts").GetArrayLength() == 2);

        var id = run.GetProperty("id").GetString();
        Assert.Contains("Tea tray: rail", await Service.Client.GetStringAsync($"/v1/plans/{id}/cut-sheet"), StringComparison.Ordinal);
        var problem = await Service.GetAsync($"/v1/plans/{id}/problem");
        Assert.Equal(["Hall bench", "Tea tray"], problem.GetProperty("builds").EnumerateArray().Select(build => build.GetString()!));
        var again = await Service.ReadAsync(
            await Service.SendAsync("POST", "/v1/plans", $$"""{"inline":{{problem.GetRawText()}},"budgetMs":15000}""", prefer: "wait=20"), HttpStatusCode.Created);
        Assert.Equal(29m, again.GetProperty("plan").GetProperty("totalCost").GetDecimal());
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{id}/acceptance"), HttpStatusCode.OK);
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{id}/closings", "{}"), HttpStatusCode.OK);
    }

    [Fact]
    public async Task What_is_built_leaves_the_queue_and_comes_back_with_its_closing_undone()
    {
        await StoreAsync("Hall bench", 1);
        await StoreAsync("Tea tray", 1);
        foreach (var name in new[] { "hall-bench", "tea-tray", "hall-bench" })
        {
            await AddAsync(name);
        }

        await BoardsAsync(3);
        var plan = await PlanAsync("""{"design":"hall-bench"}""");
        await PostAsync($"/v1/plans/{plan}/acceptance");
        Assert.Equal("1 hall-bench Hall bench, 2 tea-tray Tea tray, 3 hall-bench Hall bench", Said(await Service.GetAsync("/v1/queue")));
        Assert.Equal([plan, "-", "-"], Plans(await Service.GetAsync("/v1/queue")));

        await PostAsync($"/v1/plans/{plan}/closings", "{}");
        Assert.Equal("1 tea-tray Tea tray, 2 hall-bench Hall bench", Said(await Service.GetAsync("/v1/queue")));
        var line = (await Service.GetAsync("/v1/journal?limit=1")).GetProperty("items")[0].GetProperty("line").GetInt64();
        await PostAsync($"/v1/journal/{line}/undo");
        Assert.Equal("1 hall-bench Hall bench, 2 tea-tray Tea tray, 3 hall-bench Hall bench", Said(await Service.GetAsync("/v1/queue")));
        await PostAsync($"/v1/plans/{plan}/release");
        Assert.Equal(["-", "-", "-"], Plans(await Service.GetAsync("/v1/queue")));

        // Two of a kind: a plan takes one, the next plan the other.
        await PostAsync($"/v1/plans/{plan}/acceptance");
        var both = await PlanAsync("""{"designs":["hall-bench","tea-tray"]}""");
        await PostAsync($"/v1/plans/{both}/acceptance");
        Assert.Equal([plan, both, both], Plans(await Service.GetAsync("/v1/queue")));
        await PostAsync($"/v1/plans/{both}/closings", "{}");
        var left = await Service.GetAsync("/v1/queue");
        Assert.Equal(("1 hall-bench Hall bench", plan), (Said(left), Plans(left)[0]));
        await PostAsync($"/v1/plans/{plan}/closings", "{}");
        Assert.Equal("", Said(await Service.GetAsync("/v1/queue")));

        // What was built takes none of the places.
        for (var count = 0; count < 8; count++)
        {
            await AddAsync("tea-tray");
        }
    }

    [Fact]
    public async Task A_build_that_lacks_pieces_stays_in_the_queue()
    {
        await StoreAsync("Hall bench", 1);
        await StoreAsync("Tea tray", 1);
        await AddAsync("hall-bench");
        await AddAsync("tea-tray");
        await BoardsAsync(1);
        var plan = await PlanAsync("""{"designs":["tea-tray","hall-bench"]}""");
        await PostAsync($"/v1/plans/{plan}/acceptance");
        await PostAsync($"/v1/plans/{plan}/closings", "{}");
        Assert.Equal("1 hall-bench Hall bench", Said(await Service.GetAsync("/v1/queue")));
    }

    private static string[] Plans(JsonElement queue) => [.. queue.GetProperty("items").EnumerateArray().Select(build => build.GetProperty("plan").GetString() ?? "-")];

    // Each is just enough for one rail.
    private async Task BoardsAsync(int quantity) => await Service.ReadAsync(
        await Service.SendAsync("POST", "/v1/boards", FormattableString.Invariant($$"""{"species":"white-ash","thicknessMm":25.4,"widthMm":70,"lengthMm":700,"quantity":{{quantity}}}""")),
        HttpStatusCode.Created);

    private async Task<string> PlanAsync(string asked) => (await Service.ReadAsync(
        await Service.SendAsync("POST", "/v1/plans", asked, prefer: "wait=20"), HttpStatusCode.Created)).GetProperty("id").GetString()!;

    private async Task PostAsync(string path, string? body = null) => await Service.ReadAsync(await Service.SendAsync("POST", path, body), HttpStatusCode.OK);

    private static string Said(JsonElement queue) => string.Join(", ", queue.GetProperty("items").EnumerateArray().Select(build =>
        $"{build.GetProperty("position").GetInt32()} {build.GetProperty("design").GetString()} {build.GetProperty("name").GetString()}"));

    private static long Id(JsonElement queue, string design) =>
        queue.GetProperty("items").EnumerateArray().First(build => build.GetProperty("design").GetString() == design).GetProperty("id").GetInt64();

    private async Task AddAsync(string design) =>
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/queue", $$"""{"design":"{{design}}"}"""), HttpStatusCode.Created);

    private async Task StoreAsync(string name, int rails) => await Service.ReadAsync(
        await Service.SendAsync("POST", "/v1/designs", $$"""{"name":"{{name}}","parts":[{"name":"rail","quantity":{{rails}},"thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}"""),
        HttpStatusCode.Created);
}
