using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Storage;

/// <summary>One stored version of a design.</summary>
/// <param name="Reference">The name as paths refer to it.</param>
/// <param name="Version">Hash of the content.</param>
/// <param name="Current">Whether it is the version that the reference stands for.</param>
/// <param name="CreatedAt">When it was first stored.</param>
/// <param name="Content">The design as JSON in the shape of the wire.</param>
public sealed record StoredDesign(string Reference, string Version, bool Current, DateTimeOffset CreatedAt, string Content);

/// <summary>The designs, versioned by content.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when a version is stored.</param>
public sealed class DesignStore(Database database, TimeProvider clock)
{
    private const string Versions = """
        SELECT d.sequence, d.reference, v.version, v.version = d.current_version AS Current, v.created_at AS CreatedAt, v.content
        FROM designs d JOIN design_versions v ON v.design_sequence = d.sequence
        """;

    /// <summary>Stores a version and makes it the current one; says whether its content is new.</summary>
    public (StoredDesign Design, bool IsNew) Store(string reference, string version, string content)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var known = FindVersion(connection, transaction, version);
        var design = connection.ExecuteScalar<long>(
            """
            INSERT INTO designs (reference, current_version) VALUES (@Reference, @Version)
            ON CONFLICT (reference) DO UPDATE SET current_version = excluded.current_version RETURNING sequence
            """,
            new { Reference = reference, Version = version },
            transaction);
        if (known is null)
        {
            connection.Execute(
                "INSERT INTO design_versions (design_sequence, version, content, created_at) VALUES (@Design, @Version, @Content, @Now)",
                new { Design = design, Version = version, Content = content, Now = Stamp.Of(clock.GetUtcNow()) },
                transaction);
        }

        var stored = FindVersion(connection, transaction, version)!.ToDesign();
        transaction.Commit();
        return (stored, known is null);
    }

    /// <summary>The current version of a reference, or else the version with this id; null if there is neither.</summary>
    public StoredDesign? Find(string referenceOrVersion)
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<DesignRow>(
            $"""
            {Versions} WHERE (d.reference = @Wanted AND v.version = d.current_version) OR v.version = @Wanted
            ORDER BY d.reference = @Wanted DESC LIMIT 1
            """,
            new { Wanted = referenceOrVersion })?.ToDesign();
    }

    /// <summary>Up to <paramref name="limit"/> current versions after a place in the sequence, and the place after which more follow.</summary>
    public (IReadOnlyList<StoredDesign> Designs, long? Next) List(long after, int limit)
    {
        using var connection = database.Connect();
        var rows = connection.Query<DesignRow>(
            $"{Versions} WHERE v.version = d.current_version AND d.sequence > @After ORDER BY d.sequence LIMIT @Rows",
            new { After = after, Rows = limit + 1 }).AsList();
        return ([.. rows.Take(limit).Select(row => row.ToDesign())], rows.Count > limit ? rows[limit - 1].Sequence : null);
    }

    /// <summary>All versions of a reference, newest first; empty if there is no such design.</summary>
    public IReadOnlyList<StoredDesign> ListVersions(string reference)
    {
        using var connection = database.Connect();
        return [.. connection.Query<DesignRow>($"{Versions} WHERE d.reference = @Reference ORDER BY v.sequence DESC", new { Reference = reference })
            .Select(row => row.ToDesign())];
    }

    /// <summary>Forgets a design with all its versions; false if there is none.</summary>
    public bool Delete(string reference)
    {
        using var connection = database.Connect();
        return connection.Execute("DELETE FROM designs WHERE reference = @Reference", new { Reference = reference }) > 0;
    }

    private static DesignRow? FindVersion(SqliteConnection connection, SqliteTransaction transaction, string version) =>
        connection.QuerySingleOrDefault<DesignRow>($"{Versions} WHERE v.version = @Version", new { Version = version }, transaction);
}
