using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Offcuts.Host;

namespace Offcuts.Cli.Connections;

/// <summary>The API in this process, on a Unix socket that only this user can reach. It opens no port.</summary>
internal sealed class EmbeddedServer : IAsyncDisposable
{
    // sockaddr_un of Linux holds 108 bytes with the closing zero, of macOS 104.
    private const int LongestSocketPath = 103;
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(2);
    private readonly DirectoryInfo folder;
    private readonly WebApplication app;

    private EmbeddedServer(DirectoryInfo folder, WebApplication app, string socketPath) =>
        (this.folder, this.app, SocketPath) = (folder, app, socketPath);

    /// <summary>The socket.</summary>
    public string SocketPath { get; }

    /// <summary>Opens the database, makes it if need be, and starts to listen.</summary>
    /// <exception cref="CliException">The database or the folder cannot be used.</exception>
    public static async Task<EmbeddedServer> StartAsync(string databasePath, CancellationToken cancellationToken)
    {
        // CreateTempSubdirectory gives the folder mode 0700.
        var folder = Directory.CreateTempSubdirectory("offcuts-");
        try
        {
            var socket = Path.Combine(folder.FullName, "s");
            if (socket.Length > LongestSocketPath)
            {
                throw new CliException("failed", $"The path {socket} is too long for a socket. Set TMPDIR to a shorter folder.");
            }

            var app = OffcutsHost.Build(new HostSettings { DatabasePath = databasePath, UnixSocketPath = socket });
            await app.StartAsync(cancellationToken);
            return new EmbeddedServer(folder, app, socket);
        }
        catch (SqliteException fault)
        {
            folder.Delete(recursive: true);
            throw Explained(fault, databasePath);
        }
        catch
        {
            folder.Delete(recursive: true);
            throw;
        }
    }

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
        folder.Delete(recursive: true);
    }

    // Primary result codes of SQLite: 11 CORRUPT, 26 NOTADB; 8 READONLY, 14 CANTOPEN, 13 FULL.
    private static CliException Explained(SqliteException fault, string path) => fault.SqliteErrorCode switch
    {
        11 or 26 => new("data-integrity", $"{path} is damaged or no Offcuts database ({fault.Message}). Nothing was changed: put a copy of the file back, or use another folder with --data."),
        _ => new("failed", $"{path} cannot be used ({fault.Message}). Check that the folder can be written and is not full."),
    };
}
