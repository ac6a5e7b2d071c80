using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>A build that waits.</summary>
/// <param name="Id">Id of the entry.</param>
/// <param name="Position">Its place, from 1.</param>
/// <param name="Design">Reference of the design.</param>
/// <param name="AddedAt">When it was added.</param>
public sealed record QueuedBuild(long Id, int Position, string Design, DateTimeOffset AddedAt);

/// <summary>A row of <c>build_queue</c>.</summary>
internal sealed class QueueRow
{
    public long Id { get; init; }

    public int Position { get; init; }

    public string Design { get; init; } = "";

    public string AddedAt { get; init; } = "";
}

/// <summary>The builds that wait, the most important first.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when one is added.</param>
public sealed class QueueStore(Database database, TimeProvider clock)
{
    /// <summary>All of them in their order.</summary>
    public IReadOnlyList<QueuedBuild> List()
    {
        using var connection = database.Connect();
        return [.. Rows(connection, null).Select(row => new QueuedBuild(row.Id, row.Position, row.Design, Stamp.Read(row.AddedAt)))];
    }

    /// <summary>Adds a build at a place, or as the last.</summary>
    /// <exception cref="OffcutsException">As many wait as may.</exception>
    public void Add(string design, int? position)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var ids = Rows(connection, transaction).Select(row => row.Id).ToList();
        if (ids.Count >= JointDesign.MaxBuilds)
        {
            throw new OffcutsException(ErrorCode.Conflict, FormattableString.Invariant($"{ids.Count} builds wait, as many as may: remove one first."));
        }

        var id = connection.ExecuteScalar<long>(
            "INSERT INTO build_queue (position, design, added_at) VALUES (@Position, @Design, @Now) RETURNING id",
            new { Position = ids.Count + 1, Design = design, Now = Stamp.Of(clock.GetUtcNow()) }, transaction);
        Place(connection, transaction, ids, id, position ?? ids.Count + 1);
        transaction.Commit();
    }

    /// <summary>Moves an entry to another place; false if there is none of this id.</summary>
    public bool Move(long id, int position)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var ids = Rows(connection, transaction).Select(row => row.Id).ToList();
        if (!ids.Remove(id))
        {
            return false;
        }

        Place(connection, transaction, ids, id, position);
        transaction.Commit();
        return true;
    }

    /// <summary>Takes an entry out; false if there is none of this id.</summary>
    public bool Remove(long id)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        if (connection.Execute("DELETE FROM build_queue WHERE id = @Id", new { Id = id }, transaction) == 0)
        {
            return false;
        }

        Write(connection, transaction, [.. Rows(connection, transaction).Select(row => row.Id)]);
        transaction.Commit();
        return true;
    }

    private static void Place(SqliteConnection connection, SqliteTransaction transaction, List<long> others, long id, int position)
    {
        others.Insert(Math.Clamp(position - 1, 0, others.Count), id);
        Write(connection, transaction, others);
    }

    private static void Write(SqliteConnection connection, SqliteTransaction transaction, List<long> ids) => connection.Execute(
        "UPDATE build_queue SET position = @Position WHERE id = @Id", ids.Select((id, at) => new { Id = id, Position = at + 1 }), transaction);

    private static List<QueueRow> Rows(SqliteConnection connection, SqliteTransaction? transaction) => connection.Query<QueueRow>(
        "SELECT id, position, design, added_at AS AddedAt FROM build_queue ORDER BY position, id", transaction: transaction).AsList();
}
