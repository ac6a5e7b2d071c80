using Dapper;
using DbUp;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>The SQLite file. Every unit of work opens its own pooled connection.</summary>
public sealed class Database
{
    /// <summary>Schema version that this binary knows: the number of the last file in <c>db/migrations</c>.</summary>
    public const int SchemaVersion = 22;

    private readonly string connectionString;

    private Database(string connectionString) => this.connectionString = connectionString;

    /// <summary>Opens the file, makes it if need be (mode 0600) and brings its schema up to date.</summary>
    /// <exception cref="OffcutsException">The file was written by a newer version.</exception>
    public static Database Open(string path)
    {
        CreatePrivately(path);
        var database = new Database(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            ForeignKeys = true,
            DefaultTimeout = 10,
        }.ToString());
        database.Migrate(path);
        return database;
    }

    /// <summary>An open connection; dispose of it after one unit of work.</summary>
    internal SqliteConnection Connect()
    {
        var connection = new SqliteConnection(connectionString);
        connection.Open();
        return connection;
    }

    private static void CreatePrivately(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
            return;
        }

        if (!Directory.Exists(folder))
        {
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        if (!File.Exists(path))
        {
            // The -wal and -shm files take their mode from this one.
            using var file = new FileStream(path, new FileStreamOptions
            {
                Mode = FileMode.OpenOrCreate,
                Access = FileAccess.Write,
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            });
        }
    }

    // One cheap query decides; DbUp is loaded only when there is something to do.
    private void Migrate(string path)
    {
        using (var connection = Connect())
        {
            var found = connection.ExecuteScalar<int>("PRAGMA user_version");
            if (found == SchemaVersion)
            {
                return;
            }

            if (found > SchemaVersion)
            {
                throw new OffcutsException(
                    ErrorCode.DataIntegrity,
                    $"The database {path} has schema version {found}; this program knows versions up to {SchemaVersion}. Use the newer program that wrote it.");
            }

            if (found > 0)
            {
                BackUp(connection, $"{path}.before-{SchemaVersion}-from-{found}");
            }

            connection.Execute("PRAGMA journal_mode = WAL");
        }

        ApplyMigrations();
    }

    // VACUUM INTO reads one consistent state, whatever other processes do; the rename makes a half-written copy impossible.
    private static void BackUp(SqliteConnection connection, string path)
    {
        var unfinished = path + ".unfinished";
        File.Delete(unfinished);
        CreatePrivately(unfinished);
        connection.Execute("VACUUM INTO @Path", new { Path = unfinished });
        File.Move(unfinished, path, overwrite: true);
    }

    private void ApplyMigrations()
    {
        var outcome = DeployChanges.To.SqliteDatabase(connectionString)
            .WithScriptsEmbeddedInAssembly(typeof(Database).Assembly)
            .WithTransactionPerScript()
            .LogToNowhere()
            .Build()
            .PerformUpgrade();
        if (!outcome.Successful)
        {
            throw new OffcutsException(
                ErrorCode.DataIntegrity, $"Migration {outcome.ErrorScript?.Name} failed: {outcome.Error.Message} Nothing of it was kept.");
        }
    }
}
