using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>A build that waits.</summary>
/// <param name="Id">Id of the entry.</param>
/// <param name="Position">Its place, from 1.</param>
/// <param name="Design">Reference of the design.</param>
/// <param name="AddedAt">When it was added.</param>
/// <param name="PlanId">The accepted plan that is to build it; null if there is none.</param>
public sealed record QueuedBuild(long Id, int Position, string Design, DateTimeOffset AddedAt, string? PlanId);

/// <summary>The builds that wait, the most important first.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when one is added.</param>
public sealed class QueueStore(Database database, TimeProvider clock)
{
    /// <summary>All of them in their order; what is built waits no more.</summary>
    public IReadOnlyList<QueuedBuild> List()
    {
        using var connection = database.Connect();
        return [.. QueueTable.Waiting(connection, null).Select((waiting, index) =>
            new QueuedBuild(waiting.Entry.Id, index + 1, waiting.Entry.Design, Stamp.Read(waiting.Entry.AddedAt), waiting.PlanId))];
    }

    /// <summary>Adds a build at a place, or as the last.</summary>
    /// <exception cref="OffcutsException">As many wait as may.</exception>
    public void Add(string design, int? position)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var ids = Ids(connection, transaction);
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
        var ids = Ids(connection, transaction);
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
        var ids = Ids(connection, transaction);
        if (!ids.Remove(id))
        {
            return false;
        }

        connection.Execute("DELETE FROM build_queue WHERE id = @Id", new { Id = id }, transaction);
        Write(connection, transaction, ids);
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

    private static List<long> Ids(SqliteConnection connection, SqliteTransaction transaction) =>
        [.. QueueTable.Waiting(connection, transaction).Select(waiting => waiting.Entry.Id)];
}
