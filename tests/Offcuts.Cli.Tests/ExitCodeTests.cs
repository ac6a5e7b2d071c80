using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Offcuts.Cli.Tests;

public sealed class ExitCodeTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task What_contradicts_the_store_ends_with_5()
    {
        var outcome = await offcuts.RunAsync("species", "add", "white-ash", "--name", "Our ash");

        Assert.Equal(5, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains("white-ash", outcome.Err, StringComparison.Ordinal);
    }

    // The wire's own words from a server elsewhere: what it says of its database must come out as the same exit code as here.
    [Theory]
    [InlineData("500 Internal Server Error", "data-integrity", 7)]
    [InlineData("409 Conflict", "conflict", 5)]
    [InlineData("500 Internal Server Error", "internal", 1)]
    public async Task A_servers_fault_keeps_its_exit_code(string status, string code, int expected)
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var answering = AnswerAsync(listener, status, $$"""{"type":"/problems/{{code}}","title":"t","status":500,"detail":"Told by the server.","code":"{{code}}","errors":[],"traceId":"1"}""");
        var url = FormattableString.Invariant($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");

        var outcome = await offcuts.RunAsync("shop", "show", "--server", url);
        await answering;

        Assert.Equal(expected, outcome.Code);
        Assert.Equal("error: Told by the server.\n", outcome.Err);
    }

    [Fact]
    public async Task A_server_of_another_kind_is_named_with_the_way_out()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var answering = AnswerAsync(listener, "404 Not Found", "<html>no</html>");
        var url = FormattableString.Invariant($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");

        var outcome = await offcuts.RunAsync("shop", "show", "--server", url);
        await answering;

        Assert.Equal(1, outcome.Code);
        Assert.StartsWith($"error: {url} answers but does not know /v1/shop", outcome.Err, StringComparison.Ordinal);
        Assert.Contains("OFFCUTS_URL", outcome.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_damaged_under_a_running_server_ends_with_7()
    {
        await offcuts.RunAsync("boards", "add", "1 x 2 x 30", "--species", "white-ash");
        var (server, url) = await offcuts.ServeAsync();
        try
        {
            await using (var file = new FileStream(offcuts.Store, FileMode.Open, FileAccess.Write, FileShare.ReadWrite))
            {
                await file.WriteAsync(Encoding.ASCII.GetBytes(new string('x', (int)file.Length)));
            }

            File.Delete(offcuts.Store + "-wal");
            var outcome = await offcuts.RunAsync("boards", "list", "--server", url);
            Assert.True(outcome.Code == 7, outcome.Err);
        }
        finally
        {
            server.Kill();
            server.Dispose();
        }
    }

    private static async Task AnswerAsync(TcpListener listener, string status, string body)
    {
        using var client = await listener.AcceptTcpClientAsync().WaitAsync(TimeSpan.FromSeconds(20));
        var stream = client.GetStream();
        var request = new StringBuilder();
        var buffer = new byte[4096];
        while (!request.ToString().Contains("\r\n\r\n", StringComparison.Ordinal))
        {
            request.Append(Encoding.ASCII.GetString(buffer, 0, await stream.ReadAsync(buffer)));
        }

        var head = FormattableString.Invariant($"HTTP/1.1 {status}\r\nContent-Type: application/problem+json\r\nContent-Length: {body.Length}\r\nConnection: close\r\n\r\n");
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head + body));
    }
}
