using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

public sealed class HistoryTests : OwnService
{
    private Shop Shop => new(Service);

    [Fact]
    public async Task A_board_tells_where_it_came_from_which_plan_cut_it_and_what_became_of_it()
    {
        var id = await Shop.LogAsync();
        await Service.SendAsync("PUT", $"/v1/boards/{id}", Shop.Ash.Replace("rack 2", "bench", StringComparison.Ordinal).Replace("1400", "1390", StringComparison.Ordinal));
        var plan = await Shop.PlanAsync(1, length: 600);
        await Shop.AcceptAsync(plan);
        await Shop.ReleaseAsync(plan);
        await Shop.AcceptAsync(plan);
        var left = (await Service.ReadAsync(await Shop.CloseAsync(plan, """{"boards":[{"number":1,"reason":"by eye"}]}"""), HttpStatusCode.OK))
            .GetProperty("build").GetProperty("boards")[0].GetProperty("leftovers").EnumerateArray().Select(leftover => leftover.GetString()!).ToList();

        var history = await HistoryAsync(id);
        Assert.Equal(
            ["log", "edit", "accept", "release", "accept", "close"],
            history.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("kind").GetString()));
        Assert.StartsWith("logged: white ash, ", Text(history, 0), StringComparison.Ordinal);
        Assert.Contains("place: rack 2 -> bench", Text(history, 1), StringComparison.Ordinal);
        Assert.Contains("size: ", Text(history, 1), StringComparison.Ordinal);
        Assert.Equal($"held by plan {Shop.Id(plan)} as board 1 of it", Text(history, 2));
        Assert.Equal($"cut as board 1 of the plan, left over: {string.Join(", ", left)} (by eye)", Text(history, 5));
        Assert.Equal("used", history.GetProperty("items")[5].GetProperty("board").GetProperty("status").GetString());
        Assert.Equal(left, history.GetProperty("cutInto").EnumerateArray().Select(leftover => leftover.GetString()));
        Assert.Equal(JsonValueKind.Null, history.GetProperty("cutFrom").ValueKind);

        var leftover = await HistoryAsync(left[0].ToLowerInvariant());
        Assert.Equal(id, leftover.GetProperty("cutFrom").GetString());
        Assert.StartsWith($"left over from board {id}: white ash", Text(leftover, 0), StringComparison.Ordinal);

        // Taken back, it was never cut; the leftovers are out of the inventory, but not out of the book.
        await Shop.UndoAsync(await Shop.NewestLineAsync());
        history = await HistoryAsync(id);
        Assert.Empty(history.GetProperty("cutInto").EnumerateArray());
        Assert.Equal("line 6 was taken back", Text(history, 6));
        Assert.Equal(7, history.GetProperty("items")[5].GetProperty("undoneBy").GetInt32());
        leftover = await HistoryAsync(left[0]);
        Assert.Equal(JsonValueKind.Null, leftover.GetProperty("items")[1].GetProperty("board").ValueKind);
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("GET", "/v1/boards/ZZZ/history")).StatusCode);
    }

    [Fact]
    public async Task A_bought_board_tells_what_it_cost_and_one_of_several_alike_which_were_cut()
    {
        var bought = await Shop.PlanAsync(1, buying: true);
        await Shop.AcceptAsync(bought);
        var closed = (await Service.ReadAsync(await Shop.CloseAsync(bought), HttpStatusCode.OK)).GetProperty("build").GetProperty("boards")[0];
        Assert.StartsWith("bought from Hill Yard for 18.60 USD, cut as board 1 of the plan, left over: ", Text(await HistoryAsync(closed.GetProperty("boardId").GetString()!), 0), StringComparison.Ordinal);
        foreach (var leftover in closed.GetProperty("leftovers").EnumerateArray())
        {
            await Service.SendAsync("DELETE", $"/v1/boards/{leftover.GetString()}");
        }

        var id = await Shop.LogAsync(quantity: 3);
        var plan = await Shop.PlanAsync(2);
        await Shop.AcceptAsync(plan);
        await Shop.CloseAsync(plan);
        var history = await HistoryAsync(id);
        Assert.StartsWith("logged: 3 of white ash, ", Text(history, 0), StringComparison.Ordinal);
        Assert.EndsWith("as board 1 and 2 of it", Text(history, 1), StringComparison.Ordinal);
        Assert.Contains("cut as board 1 of the plan", Text(history, 2), StringComparison.Ordinal);
        Assert.Contains("; cut as board 2 of the plan", Text(history, 2), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_size_that_was_estimated_and_then_measured_shows()
    {
        const string Measured = """{"species":"white-ash","thicknessMm":25.4,"widthMm":127,"lengthMm":1016}""";
        var id = await Shop.LogAsync(Measured.Replace("1016", "1016,\"estimated\":{\"length\":true}", StringComparison.Ordinal));
        await Service.SendAsync("PUT", $"/v1/boards/{id}", Measured);
        var history = await HistoryAsync(id);
        Assert.Equal("logged: white ash, 1 x 5 x about 40 in", Text(history, 0));
        Assert.Equal("changed: size: 1 x 5 x about 40 in -> 1 x 5 x 40 in", Text(history, 1));
    }

    [Fact]
    public async Task The_report_of_a_build_counts_its_wood_and_money()
    {
        Assert.Empty((await Service.GetAsync("/v1/reports/builds")).GetProperty("items").EnumerateArray());
        await Shop.LogAsync();
        // One rail from the rack, one from a bought board; both take the same blank: 1000 + 12.7 by 100 + 6.35 of a 25.4 mm board.
        var plan = await Shop.PlanAsync(2, buying: true, length: 1000);
        await Shop.AcceptAsync(plan);
        await Shop.CloseAsync(plan);

        var report = Assert.Single((await Service.GetAsync("/v1/reports/builds")).GetProperty("items").EnumerateArray());
        var build = (await Shop.BuildAsync(plan)).GetProperty("boards").EnumerateArray().Select(board => board.GetProperty("balance")).ToList();
        var blank = 25.4m * (1000 + 12.7m) * (100 + 6.35m) / 1e9m;
        Assert.Equal(("built", decimal.Round(2 * blank, 9), 0.5m), (report.GetProperty("state").GetString(), Number("partsM3"), Number("rackShare")));
        var consumed = build.Sum(balance => balance.GetProperty("boardMm2").GetDecimal() - balance.GetProperty("leftoversMm2").GetDecimal()) * 25.4m / 1e9m;
        Assert.Equal(decimal.Round(consumed, 9), Number("consumedM3"));
        Assert.Equal(decimal.Round(2 * blank / consumed, 4), Number("yield"));
        // 1 board foot is 144 cubic inches; the offer asks 6.20 for it, and 18.60 for 1 x 6 x 72 in.
        Assert.Equal(decimal.Floor(blank * 1e9m / (144 * 25.4m * 25.4m * 25.4m) * 620) / 100, Number("notSpent"));
        Assert.Equal(18.6m, Number("spent"));

        decimal Number(string member) => report.GetProperty(member).GetDecimal();
    }

    [Fact]
    public async Task The_pile_grows_with_what_is_logged_and_shrinks_with_what_is_cut()
    {
        await Service.SendAsync("POST", "/v1/board-imports", """
            boards:
              - {species: white ash, size: 25.4mm x 150 x 1400, logged: 2026-01-05, quantity: 2}
            """, "application/yaml");
        var gone = await Shop.LogAsync();
        await Service.SendAsync("DELETE", $"/v1/boards/{gone}");
        var plan = await Shop.PlanAsync(1, length: 1000);
        await Shop.AcceptAsync(plan);
        var one = 25.4m * 150 * 1400 / 1e9m;
        var pile = (await Service.GetAsync("/v1/reports/pile")).GetProperty("items").EnumerateArray().ToList();
        Assert.Equal(("2026-01-05", 2, 2 * one), Point(Assert.Single(pile)));

        await Shop.CloseAsync(plan);
        pile = [.. (await Service.GetAsync("/v1/reports/pile")).GetProperty("items").EnumerateArray()];
        var leftovers = (await Shop.BuildAsync(plan)).GetProperty("boards")[0];
        var left = leftovers.GetProperty("balance").GetProperty("leftoversMm2").GetDecimal() * 25.4m / 1e9m;
        Assert.Equal(2, pile.Count);
        Assert.Equal(
            (DateTime.UtcNow.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), 1 + leftovers.GetProperty("leftovers").GetArrayLength(), decimal.Round(one + left, 9)),
            Point(pile[1]));
        Assert.StartsWith("<svg", await Service.Client.GetStringAsync("/v1/reports/pile/chart"), StringComparison.Ordinal);

        static (string?, int, decimal) Point(JsonElement point) =>
            (point.GetProperty("day").GetString(), point.GetProperty("boards").GetInt32(), point.GetProperty("volumeM3").GetDecimal());
    }

    private async Task<JsonElement> HistoryAsync(string id) => await Service.GetAsync($"/v1/boards/{id}/history");

    private static string Text(JsonElement history, int index) => history.GetProperty("items")[index].GetProperty("text").GetString()!;
}
