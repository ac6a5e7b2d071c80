using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Offcuts.Host;

namespace Offcuts.Cli.Connections;

/// <summary>The API in this process, which only this process can reach: it opens neither port nor socket.</summary>
internal sealed class EmbeddedServer : IAsyncDisposable
{
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(2);
    private readonly WebApplication app;

    private EmbeddedServer(WebApplication app) => this.app = app;

    /// <summary>Opens the database, makes it if need be, and starts to answer.</summary>
    /// <exception cref="CliException">The database cannot be used.</exception>
    public static async Task<EmbeddedServer> StartAsync(string databasePath, CancellationToken cancellationToken)
    {
        try
        {
            var app = OffcutsHost.Build(new HostSettings { DatabasePath = databasePath, InProcess = true });
            await app.StartAsync(cancellationToken);
            return new EmbeddedServer(app);
        }
        catch (SqliteException fault)
        {
            throw Explained(fault, databasePath);
        }
    }

    /// <summary>A handler whose requests it answers.</summary>
    public HttpMessageHandler CreateHandler() => OffcutsHost.CreateHandler(app);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        // Requests that a signal cut short must end before what they use is disposed of.
        using (var patience = new CancellationTokenSource(LongestStop))
        {
            await app.StopAsync(patience.Token);
        }

        await app.DisposeAsync();
        SqliteConnection.ClearAllPools();
    }

    // Primary result codes of SQLite: 11 CORRUPT, 26 NOTADB; 8 READONLY, 14 CANTOPEN, 13 FULL.
    private static CliException Explained(SqliteException fault, string path) => fault.SqliteErrorCode switch
    {
        11 or 26 => new("data-integrity", $"{path} is damaged or no Offcuts database ({fault.Message}). Nothing was changed: put a copy of the file back, or use another folder with --data."),
        _ => new("failed", $"{path} cannot be used ({fault.Message}). Check that the folder can be written and is not full."),
    };
}
