using System.Net.Sockets;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Host.Tests;

public sealed class SocketTests
{
    [Fact]
    public async Task The_typed_client_reaches_the_service_on_a_private_socket()
    {
        var folder = Directory.CreateTempSubdirectory("offcuts-socket-");
        var socket = Path.Combine(folder.FullName, "s");
        await using var app = OffcutsHost.Build(new HostSettings { DatabasePath = Path.Combine(folder.FullName, "o.db"), UnixSocketPath = socket });
        await app.StartAsync();
        using var handler = new SocketsHttpHandler
        {
            ConnectCallback = async (_, token) =>
            {
                var line = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                await line.ConnectAsync(new UnixDomainSocketEndPoint(socket), token);
                return new NetworkStream(line, ownsSocket: true);
            },
        };
        using var client = new HttpClient(handler) { BaseAddress = new Uri("http://offcuts") };
        var api = RestService.For<IOffcutsApi>(client);

        var logged = await api.CreateBoardAsync(new BoardEntry("white-ash", 25.4m, 100m, 1000m));
        var page = await api.ListBoardsAsync(new BoardQuery { Species = "white-ash", MinLengthMm = 999.9m });

        Assert.Equal(logged.Id, Assert.Single(page.Items).Id);
        Assert.Empty((await api.ListBoardsAsync(new BoardQuery { MinLengthMm = 1000.1m })).Items);
        await app.StopAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }
}
