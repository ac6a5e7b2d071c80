using Offcuts.Contracts;
using Refit;

namespace Offcuts.Cli.Connections;

/// <summary>A client of the API, wherever it is; above the handler nothing knows where that is.</summary>
internal sealed class Connection : IAsyncDisposable
{
    private static readonly TimeSpan ConnectTimeout = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan AnswerTimeout = TimeSpan.FromSeconds(30);
    private readonly EmbeddedServer? embedded;
    private readonly HttpClient client;

    private Connection(Uri address, HttpMessageHandler handler, EmbeddedServer? embedded)
    {
        this.embedded = embedded;
        client = new HttpClient(handler) { BaseAddress = address, Timeout = AnswerTimeout };
        Api = RestService.ForGenerated<IOffcutsApi>(client, new RefitSettings(new SystemTextJsonContentSerializer(ClientJson.Default.Options)));
    }

    /// <summary>The API.</summary>
    public IOffcutsApi Api { get; }

    /// <summary>Connects as chosen; hosts the API in this process if no server is.</summary>
    public static async Task<Connection> OpenAsync(ConnectionChoice choice, CancellationToken cancellationToken)
    {
        if (choice.Server is { } server)
        {
            return new Connection(server, new SocketsHttpHandler { ConnectTimeout = ConnectTimeout, AllowAutoRedirect = false }, null);
        }

        var embedded = new EmbeddedServer(choice.DatabasePath!);
        var connection = new Connection(new Uri("http://offcuts"), embedded.CreateHandler(), embedded);
        try
        {
            // A request that needs no database makes client and service load what they share while the database is opened.
            await connection.Api.GetHealthAsync(cancellationToken);
            await embedded.StartAsync(cancellationToken);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        if (embedded is not null)
        {
            await embedded.DisposeAsync();
        }
    }
}
