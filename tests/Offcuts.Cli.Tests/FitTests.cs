using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class FitTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task The_designs_of_the_demo_are_ranked_and_remembered()
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        var first = await offcuts.RunAsync("fit", "--data", "shop");
        Assert.True(first.Code == 0, first.Err);
        var lines = first.Out.TrimEnd().Split('\n');
        Assert.Matches("^ +DESIGN +STILL TO SPEND +FROM STOCK +EATS +LACKS$", lines[0]);
        Assert.Equal((await offcuts.RunAsync("designs", "list", "--data", "shop")).Out.TrimEnd().Split('\n').Length, lines.Length);
        Assert.All(lines.Skip(1), line => Assert.Matches("^ +[0-9]+\\.  [a-z-]+ +[0-9]+\\.[0-9]{2} USD +[0-9]+ % +[0-9]+\\.[0-9]{2} USD  (nothing|buy|no wood)", line));

        var again = await offcuts.RunAsync("fit", "--data", "shop", "--json");
        using var list = JsonDocument.Parse(again.Out);
        Assert.Equal(0, list.RootElement.GetProperty("end").GetProperty("planned").GetInt32());
        Assert.Equal(lines.Skip(1).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1]), list.RootElement.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("design").GetString()));

        var cherry = await offcuts.RunAsync("fit", "--species", "cherry", "--limit", "1", "--data", "shop");
        Assert.Equal(2, cherry.Out.TrimEnd().Split('\n').Length);
    }

    [Fact]
    public async Task A_board_tells_which_parts_it_could_become()
    {
        var board = (await offcuts.RunAsync("boards", "add", "1 x 5 x 40", "--species", "white-ash")).Out.Trim();
        Assert.Contains("gives no part", (await offcuts.RunAsync("boards", "uses", board)).Err, StringComparison.Ordinal);
        await offcuts.RunAsync(
            ["designs", "add", "-"],
            "{name: Stool, unit: in, parts: [{name: Leg, quantity: 4, size: 3/4 x 2 x 12, species: ash}], panels: [{name: Seat, size: 3/4 x 12 x 14, species: ash}]}", null);

        var uses = await offcuts.RunAsync("boards", "uses", board);

        Assert.True(uses.Code == 0, uses.Err);
        Assert.Matches("stool +Leg +3/4 x 2 x 12 in +6 +4\n", uses.Out);
        Assert.Matches("stool +Seat +3/4 x 12 x 14 in +strips, [89] [0-9/]+\" wide +1\n", uses.Out);
    }

    [Theory]
    [InlineData("no design", "There are no designs yet", 0)]
    [InlineData("--order best", "'best' is not known", 2)]
    [InlineData("--all --limit 3", "exclude each other", 2)]
    [InlineData("--species plastic", "There is no species 'plastic'", 2)]
    [InlineData("--hours much", "--hours 'much'", 2)]
    [InlineData("--budget soon", "--budget", 2)]
    public async Task What_cannot_be_is_told_in_one_line(string options, string told, int code)
    {
        await offcuts.RunAsync("shop", "set", "--kerf", "1/16");
        var outcome = await offcuts.RunAsync(["fit", .. options == "no design" ? [] : options.Split(' ')]);
        Assert.Equal((code, ""), (outcome.Code, outcome.Out));
        Assert.Contains(told, outcome.Err, StringComparison.Ordinal);
        Assert.Single(outcome.Err.TrimEnd().Split('\n'));
    }

    [Fact]
    public async Task Designs_are_chosen_by_tag_and_hours()
    {
        await offcuts.RunAsync(["designs", "add", "-"], "{name: Peg, tags: [gift], hours: 1, items: [{name: Dowel, price: 2}]}", null);
        await offcuts.RunAsync(["designs", "add", "-"], "{name: Chest, tags: [gift, big], hours: 40, items: [{name: Lock, price: 9}]}", null);
        Assert.Contains("chest", (await offcuts.RunAsync("fit", "--tag", "Gift", "--tag", "big")).Out, StringComparison.Ordinal);
        var quick = await offcuts.RunAsync("fit", "--hours", "2.5", "--spend", "5");
        Assert.Contains("peg", quick.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("chest", quick.Out, StringComparison.Ordinal);
        Assert.Contains("1 design left out by tags or hours", quick.Err, StringComparison.Ordinal);
    }
}
