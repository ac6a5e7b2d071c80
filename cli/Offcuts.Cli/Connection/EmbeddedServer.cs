using Microsoft.Data.Sqlite;
using Offcuts.Cli.Commands;
using Offcuts.Host;
using Offcuts.Host.InProcess;

namespace Offcuts.Cli.Connections;

/// <summary>The API in this process, which only this process can reach: it opens neither port nor socket.</summary>
internal sealed class EmbeddedServer : IAsyncDisposable
{
    private readonly string databasePath;
    private readonly InProcessService service;

    /// <summary>Begins to open the database, which is made if need be.</summary>
    public EmbeddedServer(string databasePath)
    {
        this.databasePath = databasePath;
        service = new InProcessService(new HostSettings { DatabasePath = databasePath }, Console.Error);
    }

    /// <summary>Waits until it can answer.</summary>
    /// <exception cref="CliException">The database cannot be used.</exception>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        try
        {
            await service.StartAsync(cancellationToken);
        }
        catch (SqliteException fault)
        {
            throw Explained(fault, databasePath);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw Files.NoStore(databasePath, fault);
        }
    }

    /// <summary>A handler whose requests it answers.</summary>
    public HttpMessageHandler CreateHandler() => service.CreateHandler();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await service.DisposeAsync();
        SqliteConnection.ClearAllPools();
    }

    // Primary result codes of SQLite: 11 CORRUPT, 26 NOTADB; 8 READONLY, 14 CANTOPEN, 13 FULL.
    internal static CliException Explained(SqliteException fault, string path) => fault.SqliteErrorCode switch
    {
        11 or 26 => new("data-integrity", $"{path} is damaged or no Offcuts database ({fault.Message}). Nothing was changed: put a copy of the file back, or use another folder with --data."),
        _ => new("failed", $"{path} cannot be used ({fault.Message}). Check that the folder can be written and is not full."),
    };
}
