using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Offcuts.Cli.Tests;

// Real processes and real signals.
public sealed partial class SignalTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [LinuxFact]
    public async Task A_search_listens_nowhere_and_ends_with_143_by_SIGTERM()
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        LongSearch.Write(offcuts.Folder);
        using var plan = offcuts.Start(["plan", LongSearch.File, "--data", "shop", "--budget", "60s"]);
        var (server, address) = await offcuts.ServeAsync("--data", "shop");
        using var killed = server;
        using var client = new HttpClient { BaseAddress = new Uri(address) };
        await UntilAsync(async () => (await NewestAsync(client)).GetProperty("state").GetString() == "planning");

        // The same look at a process that does listen shows that it would be seen.
        Assert.NotEmpty(Listening(server.Id));
        Assert.Empty(Listening(plan.Id));
        server.Kill();

        using var kill = Process.Start("kill", ["-TERM", plan.Id.ToString(CultureInfo.InvariantCulture)]);
        var stopped = await Program.FinishAsync(plan);
        Assert.True(stopped.Code == 143, stopped.Err);
        Assert.DoesNotContain("   at ", stopped.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_is_killed_while_it_plans_leaves_the_run_interrupted()
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        var (server, address) = await offcuts.ServeAsync("--data", "shop");
        using var killed = server;
        using var client = new HttpClient { BaseAddress = new Uri(address) };
        LongSearch.Write(offcuts.Folder);
        Assert.Equal(0, (await offcuts.RunAsync("designs", "add", LongSearch.File, "--data", "shop")).Code);
        using var asked = await client.PostAsJsonAsync("/v1/plans", new { design = LongSearch.Slug, budgetMs = 60000 });
        await UntilAsync(async () => (await NewestAsync(client)).GetProperty("state").GetString() == "planning");

        server.Kill();
        await server.WaitForExitAsync();
        var next = await offcuts.RunAsync("plans", "list", "--json", "--data", "shop");

        using var plans = JsonDocument.Parse(next.Out);
        var run = plans.RootElement.GetProperty("items").EnumerateArray().First();
        Assert.Equal(LongSearch.Slug, run.GetProperty("design").GetProperty("reference").GetString());
        Assert.Equal("interrupted", run.GetProperty("state").GetString());
    }

    // The numbers of the process' sockets among those of the machine's listeners (proc(5): state 0A is LISTEN).
    private static IEnumerable<string> Listening(int process) => Sockets(process).Intersect(
        new[] { "/proc/net/tcp", "/proc/net/tcp6" }.Where(File.Exists).SelectMany(File.ReadLines)
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(fields => fields[3] == "0A").Select(fields => fields[9]));

    private static async Task<JsonElement> NewestAsync(HttpClient client) =>
        (await client.GetFromJsonAsync<JsonElement>("/v1/plans")).GetProperty("items").EnumerateArray().First();

    private static IEnumerable<string> Sockets(int process) =>
        Directory.EnumerateFileSystemEntries(FormattableString.Invariant($"/proc/{process}/fd"))
            .Select(descriptor => Socket().Match(new FileInfo(descriptor).LinkTarget ?? "")).Where(match => match.Success)
            .Select(match => match.Groups["inode"].Value);

    private static async Task UntilAsync(Func<Task<bool>> isSo)
    {
        for (var attempt = 0; attempt < 1000; attempt++)
        {
            if (await isSo())
            {
                return;
            }

            await Task.Delay(20);
        }

        throw new TimeoutException("It never came to it.");
    }

    [GeneratedRegex(@"^socket:\[(?<inode>[0-9]+)\]$")]
    private static partial Regex Socket();
}
