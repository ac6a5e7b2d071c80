using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class BuildTests : IDisposable
{
    // Each rail takes a board of the kind below, and leaves an end worth keeping.
    private const string Rails = "{name: Rails, unit: in, parts: [{name: Rail, quantity: 3, size: 3/4 x 4 x 24, species: white-ash}]}";

    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_plan_is_accepted_cut_board_by_board_taken_back_and_given_back()
    {
        var board = (await offcuts.RunAsync("boards", "add", "1 x 5 x 40", "--species", "white-ash", "--quantity", "3", "--place", "rack 2")).Out.Trim();
        await offcuts.RunAsync(["plan", "-", "--budget", "2s"], Rails, null);

        var accepted = await offcuts.RunAsync("plans", "accept", "last");
        Assert.Equal(0, accepted.Code);
        Assert.Contains("accepted, its boards are held", accepted.Out, StringComparison.Ordinal);
        Assert.Contains($" 2  {board}    held", accepted.Out, StringComparison.Ordinal);
        Assert.Contains("reserved", (await offcuts.RunAsync("boards", "list")).Out, StringComparison.Ordinal);
        Assert.Contains("3 of 3 by plan", (await offcuts.RunAsync("boards", "show", board)).Out, StringComparison.Ordinal);
        Assert.Equal(5, (await offcuts.RunAsync("boards", "remove", board, "--yes")).Code);

        var shorter = await offcuts.RunAsync("plans", "close", "last", "2", "--leftover", "1 = 5 x 14");
        Assert.Equal(2, shorter.Code);
        Assert.Contains("Board 2 does not add up", shorter.Err, StringComparison.Ordinal);
        var cut = await offcuts.RunAsync("plans", "close", "last", "2", "--leftover", "1 = 5 x 14", "--because", "split end cut off", "--place", "bin");
        Assert.True(cut.Code == 0, cut.Err);
        Assert.Contains("under way, 1 of 3 boards are cut", cut.Out, StringComparison.Ordinal);
        Assert.Contains("split end cut off", cut.Out, StringComparison.Ordinal);
        Assert.Matches("white ash  1 x 5 x 14 in +1  rough +clear +free +bin", cut.Out);
        Assert.Contains("end grain", cut.Err, StringComparison.Ordinal);
        Assert.Contains("under way", (await offcuts.RunAsync("plans", "list")).Out, StringComparison.Ordinal);

        // Taken back, and said otherwise: spoiled, thrown away, and a piece that was not foreseen.
        Assert.Equal(0, (await offcuts.RunAsync("journal", "undo")).Code);
        Assert.DoesNotContain("bin", (await offcuts.RunAsync("boards", "list")).Out, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("plans", "close", "last", "--leftover", "1=gone")).Code);
        Assert.Contains("no piece 'Leg'", (await offcuts.RunAsync("plans", "close", "last", "2", "--spoiled", "Leg")).Err, StringComparison.Ordinal);
        using var otherwise = JsonDocument.Parse((await offcuts.RunAsync(
            "plans", "close", "last", "2", "--spoiled", "rail 2", "--leftover", "1=gone", "--add", "1 x 4 x 20", "--json")).Out);
        var balance = otherwise.RootElement.GetProperty("build").GetProperty("boards")[1].GetProperty("balance");
        Assert.Equal(
            (0m, 4 * 20 * 25.4m * 25.4m, 0m),
            (balance.GetProperty("partsMm2").GetDecimal(), balance.GetProperty("leftoversMm2").GetDecimal(), balance.GetProperty("differenceMm2").GetDecimal()));

        Assert.Contains("stopped", (await offcuts.RunAsync("plans", "release", "last")).Out, StringComparison.Ordinal);
        Assert.Equal(5, (await offcuts.RunAsync("plans", "close", "last")).Code);
        Assert.Equal(0, (await offcuts.RunAsync("plans", "accept", "last")).Code);
        Assert.Contains("built", (await offcuts.RunAsync("plans", "close", "last")).Out, StringComparison.Ordinal);
        Assert.Equal(0, (await offcuts.RunAsync("journal", "check")).Code);

        var history = await offcuts.RunAsync("boards", "history", board.ToLowerInvariant());
        Assert.Contains("logged: 3 of white ash, 1 x 5 x 40 in", history.Out, StringComparison.Ordinal);
        Assert.Matches("cut as board 2 of the plan, left over: [0-9A-Z]{3} \\(split end cut off\\) \\(undone by [0-9]+\\)", history.Out);
        var builds = await offcuts.RunAsync("reports", "builds");
        Assert.Matches("rails +built +[0-9.]+ bd ft +[0-9.]+ bd ft +[0-9.]+ % +100 % +[0-9.]+ USD +0.00 USD", builds.Out);
        Assert.Matches("DAY +PIECES +WOOD\n.* bd ft\n", (await offcuts.RunAsync("reports", "pile")).Out);
        Assert.Equal(0, (await offcuts.RunAsync("reports", "pile", "--chart", "pile.svg")).Code);
        Assert.StartsWith("<svg", await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "pile.svg")), StringComparison.Ordinal);
    }
}
