using System.Runtime.CompilerServices;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;
using Offcuts.Storage;

namespace Offcuts.Host.Tests;

public sealed class DatabaseTests : IDisposable
{
    // The first version with a journal.
    private const int WithJournal = 7;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("offcuts-database-");

    public static TheoryData<int> EarlierVersions => [.. Enumerable.Range(1, Database.SchemaVersion - 1)];

    [Theory]
    [MemberData(nameof(EarlierVersions))]
    public void A_database_of_any_earlier_version_is_backed_up_and_brought_up_to_date(int version)
    {
        var path = Path.Combine(folder.FullName, "old.db");
        using (var old = Connect(path))
        {
            ApplyAsTheirProgramDid(old, version);
            old.Execute("""
                INSERT INTO boards (sequence, id, kind, species, thickness_ticks, width_ticks, length_ticks, quantity, surface, appearance, status, logged_at)
                VALUES (1, 'K7M', 'solid', 'white-ash', 8128, 48768, 292608, 1, 'rough', 'clear', 'free', '2026-01-02T03:04:05.0000000Z');
                INSERT INTO board_defects VALUES (1, 0, 'knot', 10, 20, 30, 40)
                """);
            if (version >= WithJournal)
            {
                old.Execute("""
                    INSERT INTO journal (line, at, kind) VALUES (1, '2026-01-02T03:04:05.0000000Z', 'log');
                    INSERT INTO journal_boards VALUES (1, 'K7M', '{"row":{"sequence":1,"id":"K7M","kind":"solid","species":"white-ash","thicknessTicks":8128,
                        "widthTicks":48768,"lengthTicks":292608,"quantity":1,"surface":"rough","appearance":"clear","batch":null,"leftEnd":"unknown","rightEnd":"unknown",
                        "bowTicks":0,"crookTicks":0,"cupTicks":0,"twistTicks":0,"place":null,"source":null,"note":null,"status":"free","loggedAt":"2026-01-02T03:04:05.0000000Z"},
                      "defects":[{"boardSequence":1,"ordinal":0,"kind":"knot","xTicks":10,"yTicks":20,"lengthTicks":30,"widthTicks":40}]}')
                    """);
            }
        }

        var database = Database.Open(path);

        var store = new BoardStore(database, TimeProvider.System);
        var board = store.Find("K7M")!;
        Assert.Equal(("K7M", 48768, Surface.Rough), (board.Id, board.Size.Width.Ticks, board.Surface));
        Assert.Equal("knot", Assert.Single(board.Defects).Kind);
        Assert.Equal((default, default, null, null), (board.Warp, board.Ends, board.Batch, board.Moisture));
        // What was there before the journal is its first line.
        var journal = new JournalStore(database);
        Assert.Equal((1L, 1), (journal.Check().Lines, journal.Check().Boards));
        Assert.Empty(journal.Check().Differences);
        Assert.Equal(["K7M"], Assert.Single(journal.List(null, 10).Lines, line => line.Kind == (version >= WithJournal ? JournalKind.Log : JournalKind.Opening)).Boards);
        var known = board with
        {
            Surface = Surface.SkipPlaned,
            Batch = "log 3",
            Ends = new Ends(EndState.Checked, EndState.Sound),
            Warp = new Warp(Length.FromTicks(4), Length.FromTicks(3), Length.FromTicks(2), Length.FromTicks(1)),
            Moisture = new MoistureReading(8.5m, new DateOnly(2026, 1, 2)),
        };
        store.Replace(known);
        var kept = store.Find("K7M")!;
        Assert.Equal((known.Surface, known.Batch, known.Ends, known.Warp, known.Moisture), (kept.Surface, kept.Batch, kept.Ends, kept.Warp, kept.Moisture));
        Assert.True(store.Delete("K7M"));
        Assert.Empty(journal.Check().Differences);
        using var migrated = Connect(path);
        Assert.Equal(Schema(Fresh()), Schema(migrated));
        using var backup = Connect($"{path}.before-{Database.SchemaVersion}-from-{version}");
        Assert.Equal(version, backup.ExecuteScalar<int>("PRAGMA user_version"));
        Assert.Equal("ok", backup.ExecuteScalar<string>("PRAGMA integrity_check"));
        Assert.Equal("K7M", backup.ExecuteScalar<string>("SELECT id FROM boards"));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(backup.DataSource));
        }
    }

    [Fact]
    public void A_new_database_is_not_backed_up()
    {
        Fresh().Dispose();
        Assert.Empty(folder.GetFiles("*before*"));
    }

    [Fact]
    public void The_written_schema_is_the_one_that_the_migrations_make()
    {
        using var fresh = Fresh();
        var made = Schema(fresh);
        var written = SchemaFile();
        if (Environment.GetEnvironmentVariable("OFFCUTS_WRITE_SCHEMA") == "1")
        {
            File.WriteAllText(written, made);
        }

        Assert.Equal(made, File.ReadAllText(written));
    }

    [Fact]
    public void Every_table_is_strict_and_commits_are_flushed()
    {
        using var fresh = Fresh();
        var lax = fresh.Query<string>("""
            SELECT name FROM pragma_table_list
            WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%' AND name <> 'SchemaVersions'
            """);
        Assert.Empty(lax);
        Assert.Equal(2, fresh.ExecuteScalar<int>("PRAGMA synchronous"));
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    private SqliteConnection Fresh()
    {
        var path = Path.Combine(folder.FullName, "fresh.db");
        Database.Open(path);
        return Connect(path);
    }

    private static SqliteConnection Connect(string path)
    {
        var connection = new SqliteConnection($"Data Source={path}");
        connection.Open();
        return connection;
    }

    // The scripts and the journal table are those that DbUp wrote with that version.
    private static void ApplyAsTheirProgramDid(SqliteConnection connection, int version)
    {
        connection.Execute("CREATE TABLE [SchemaVersions] (SchemaVersionID INTEGER CONSTRAINT [PK_SchemaVersions_Id] PRIMARY KEY AUTOINCREMENT NOT NULL, ScriptName TEXT NOT NULL, Applied DATETIME NOT NULL)");
        var assembly = typeof(Database).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Take(version))
        {
            using var script = new StreamReader(assembly.GetManifestResourceStream(name)!);
            connection.Execute(script.ReadToEnd());
            connection.Execute("INSERT INTO SchemaVersions (ScriptName, Applied) VALUES (@Name, '2026-01-01 00:00:00')", new { Name = name });
        }
    }

    private static string Schema(SqliteConnection connection) => string.Join("\n\n", connection.Query<string>("""
        SELECT sql || ';' FROM sqlite_schema
        WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' AND name <> 'SchemaVersions' ORDER BY type DESC, name
        """)) + "\n";

    private static string SchemaFile([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "db", "schema.sql");
}
