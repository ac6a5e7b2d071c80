using System.Net;
using System.Net.Sockets;

namespace Offcuts.Cli.Tests;

public sealed class ServerTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_server_and_the_embedded_store_give_the_same_output()
    {
        await offcuts.RunAsync("boards", "add", "1 x 6 1/2 x 48", "--species", "white-ash");
        var (server, url) = await offcuts.ServeAsync();
        try
        {
            foreach (var command in new[] { "boards list", "boards list --json", "boards show ZZZ", "species list", "shop show" })
            {
                var remote = await offcuts.RunAsync(command.Split(' '), null, new() { ["OFFCUTS_URL"] = url });
                Assert.Equal(await offcuts.RunAsync(command.Split(' ')), remote);
            }

            var status = await offcuts.RunAsync("status", "--server", url);
            Assert.Contains("--server", status.Out, StringComparison.Ordinal);
            Assert.Contains(url, status.Out, StringComparison.Ordinal);
        }
        finally
        {
            server.Kill();
            server.Dispose();
        }
    }

    [Fact]
    public async Task A_server_shows_its_reference_page_and_says_where()
    {
        var (server, url) = await offcuts.ServeAsync();
        try
        {
            Assert.Equal($"What it can be asked: {url}/reference", await server.StandardError.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(10)));
            using var client = new HttpClient();
            var page = await client.GetStringAsync(new Uri(url));
            Assert.Contains("<title>Offcuts</title>", page, StringComparison.Ordinal);
            Assert.Equal(page, await client.GetStringAsync(new Uri(url + "/reference")));
            Assert.Contains("/v1/boards", await client.GetStringAsync(new Uri(url + "/openapi/v1.json")), StringComparison.Ordinal);
        }
        finally
        {
            server.Kill();
            server.Dispose();
        }
    }

    [UnixFact]
    public async Task SIGTERM_ends_a_server_in_order()
    {
        var (server, _) = await offcuts.ServeAsync();
        using var serving = server;
        using var kill = System.Diagnostics.Process.Start("kill", ["-TERM", server.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);

        Assert.Equal(0, (await Program.FinishAsync(server)).Code);
    }

    [Fact]
    public async Task A_server_that_is_not_there_ends_with_6()
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var port = ((IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();

        var outcome = await offcuts.RunAsync("boards", "list", "--server", FormattableString.Invariant($"http://127.0.0.1:{port}"));

        Assert.Equal(6, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains("cannot be reached", outcome.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_database_ends_with_7_and_is_left_alone()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(offcuts.Store)!);
        await File.WriteAllTextAsync(offcuts.Store, new string('x', 5000));

        var outcome = await offcuts.RunAsync("boards", "list");

        Assert.Equal(7, outcome.Code);
        Assert.Contains(offcuts.Store, outcome.Err, StringComparison.Ordinal);
        Assert.Equal(new string('x', 5000), await File.ReadAllTextAsync(offcuts.Store));
    }
}
