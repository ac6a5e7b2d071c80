using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// Plans that start from an earlier one, over HTTP and through the store.
public sealed class RestartEndpointsTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task A_plan_from_an_earlier_one_keeps_what_it_can_and_says_what_has_changed()
    {
        var first = await PlanAsync(Request("A", "B"));
        Assert.Equal(JsonValueKind.Null, first.GetProperty("from").ValueKind);
        Assert.Equal(JsonValueKind.Null, first.GetProperty("plan").GetProperty("changes").ValueKind);
        var id = first.GetProperty("id").GetString()!;

        var second = await PlanAsync(Request(["B", "C"], id.ToUpperInvariant()));
        Assert.Equal(id, second.GetProperty("from").GetString());
        var changes = second.GetProperty("plan").GetProperty("changes");
        Assert.Equal((0m, 0m, "USD"), (
            changes.GetProperty("earlierWoodCost").GetDecimal(), changes.GetProperty("earlierTotalCost").GetDecimal(), changes.GetProperty("earlierCurrency").GetString()));
        var boards = changes.GetProperty("boards").EnumerateArray().ToDictionary(board => board.GetProperty("boardId").GetString()!);
        Assert.Equal(["A dropped", "B kept", "C new"], boards.Select(board => $"{board.Key} {board.Value.GetProperty("change").GetString()}").Order());
        Assert.Equal("board-gone", Assert.Single(boards["A"].GetProperty("reasons").EnumerateArray()).GetProperty("code").GetString());
        Assert.Equal("Board A is not used any more: it is not among the boards that may be cut.", boards["A"].GetProperty("text").GetString());
        Assert.Equal(JsonValueKind.Null, boards["A"].GetProperty("number").ValueKind);
        Assert.Equal(JsonValueKind.Null, boards["C"].GetProperty("earlierNumber").ValueKind);
        var part = Assert.Single(changes.GetProperty("parts").EnumerateArray());
        Assert.Equal("rail", part.GetProperty("name").GetString());
        Assert.Equal(["A 1", "B 1"], part.GetProperty("earlier").EnumerateArray().Select(Source).Order());
        Assert.Equal(["B 1", "C 1"], part.GetProperty("now").EnumerateArray().Select(Source).Order());

        // It is stored with the plan.
        Assert.Equal(second.GetRawText(), (await service.GetAsync($"/v1/plans/{second.GetProperty("id").GetString()}")).GetRawText());
    }

    [Fact]
    public async Task A_plan_that_does_not_exist_is_not_found()
    {
        var answer = await service.SendAsync("POST", "/v1/plans", Request(["A", "B"], "nosuchid"));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("nosuchid", (await Service.ProblemAsync(answer)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private static string Source(JsonElement source) => $"{source.GetProperty("boardId").GetString()} {source.GetProperty("count").GetInt32()}";

    internal static string Request(params string[] boards) => Request(boards, null);

    // Each board gives one rail.
    internal static string Request(string[] boards, string? from)
    {
        var stock = string.Join(',', boards.Select(id => $$"""{"id":"{{id}}","species":"white-ash","thicknessMm":25.4,"widthMm":80,"lengthMm":640,"loggedAt":"2026-01-02T00:00:00Z"}"""));
        return $$"""
            {"budgetMs":5000,{{(from is null ? "" : $"\"from\":\"{from}\",")}}"inline":{"stock":[{{stock}}],"offers":[],"shop":{},
             "design":{"name":"Frame","parts":[{"name":"rail","quantity":2,"thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]} } }
            """;
    }

    private async Task<JsonElement> PlanAsync(string request)
    {
        var run = await Service.ReadAsync(await service.SendAsync("POST", "/v1/plans", request, prefer: "wait=20"), HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", run.GetRawText());
        return run;
    }
}
