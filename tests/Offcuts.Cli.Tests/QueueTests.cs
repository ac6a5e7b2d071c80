using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class QueueTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Builds_wait_in_their_order_and_are_planned_together()
    {
        Assert.Contains("queue is empty", (await offcuts.RunAsync("queue", "list")).Err, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("queue", "plan")).Code);
        await StoreAsync("Bench", 2);
        await StoreAsync("Tray", 1);
        await offcuts.RunAsync("queue", "add", "bench");
        var queue = await offcuts.RunAsync("queue", "add", "tray", "--place", "1");
        Assert.Matches("1  tray    Tray .*\n +2  bench   Bench", queue.Out);
        Assert.Matches("1  bench .*\n +2  tray", (await offcuts.RunAsync("queue", "move", "tray", "2")).Out);

        await offcuts.RunAsync("boards", "add", "1 x 4 x 48", "--species", "white-ash");
        await offcuts.RunAsync("boards", "add", "1 x 4 x 24", "--species", "white-ash");
        var plan = await offcuts.RunAsync("queue", "plan", "--budget", "10s", "--sheet", "both.html");

        Assert.True(plan.Code == 0, plan.Err + plan.Out);
        Assert.Contains("Bench + Tray  (plan ", plan.Out, StringComparison.Ordinal);
        Assert.Contains("\nBuilds\n  Bench: 2 pieces from board", plan.Out, StringComparison.Ordinal);
        Assert.Contains("  Bench, then Tray: 0.00 USD\n", plan.Out, StringComparison.Ordinal);
        Assert.Contains("planing to 3/4\": Bench: Rail; Tray: Rail", plan.Out, StringComparison.Ordinal);
        Assert.Contains("Tray: Rail", await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "both.html")), StringComparison.Ordinal);
        // What is accepted is told where it is planned again; what is built waits no more.
        await offcuts.RunAsync("plans", "accept", "last");
        var id = System.Text.RegularExpressions.Regex.Match((await offcuts.RunAsync("queue", "list")).Out, "1  bench .*plan ([a-z0-9]{8})").Groups[1].Value;
        Assert.Contains($"plan {id} for it is accepted and holds its boards. With --from {id} they count as free", (await offcuts.RunAsync("queue", "plan", "--budget", "1s", "--sheet", "again.html")).Err, StringComparison.Ordinal);
        Assert.DoesNotContain("accepted", (await offcuts.RunAsync("queue", "plan", "--budget", "1s", "--from", id, "--sheet", "again.html")).Err, StringComparison.Ordinal);
        await offcuts.RunAsync("plans", "close", id);
        Assert.Contains("The queue is empty", (await offcuts.RunAsync("queue", "list")).Err, StringComparison.Ordinal);
        await offcuts.RunAsync("journal", "undo");
        using var json = JsonDocument.Parse((await offcuts.RunAsync("queue", "list", "--json")).Out);
        Assert.Equal(2, json.RootElement.GetProperty("items").GetArrayLength());

        await offcuts.RunAsync("queue", "remove", "1");
        Assert.DoesNotContain("bench", (await offcuts.RunAsync("queue", "list")).Out, StringComparison.Ordinal);
        Assert.Equal(1, (await offcuts.RunAsync("queue", "remove", "bench")).Code);
    }

    private async Task StoreAsync(string name, int rails)
    {
        var text = System.FormattableString.Invariant($"name: {name}\nunit: in\nparts:\n  - {{name: Rail, quantity: {rails}, size: 3/4 x 2 1/2 x 20, species: white-ash}}\n");
        Assert.Equal(0, (await offcuts.RunAsync(["designs", "add", "-"], text, null)).Code);
    }
}
