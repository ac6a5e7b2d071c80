using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Storage;

/// <summary>A row of <c>build_queue</c>.</summary>
internal sealed class QueueRow
{
    public long Id { get; init; }

    public int Position { get; init; }

    public string Design { get; init; } = "";

    public string AddedAt { get; init; } = "";
}

/// <summary>A row of <c>queue_claims</c>, and how far the plan's build is.</summary>
internal sealed class ClaimRow
{
    public string PlanId { get; init; } = "";

    public long EntryId { get; init; }

    public int Boards { get; init; }

    public bool IsWhole { get; init; }

    public string? Build { get; init; }
}

/// <summary>
/// Reads the queue. Whether an entry still waits is not stored: it follows from the journal, so that a closing that is taken back puts the build
/// back into the queue, at its old place.
/// </summary>
internal static class QueueTable
{
    /// <summary>The entries that wait in their order, each with the accepted plan that is to build it.</summary>
    public static List<(QueueRow Entry, string? PlanId)> Waiting(SqliteConnection connection, SqliteTransaction? transaction)
    {
        var held = connection.Query<ClaimRow>(
            """
            SELECT claims.plan_id AS PlanId, claims.entry_id AS EntryId, claims.boards, claims.is_whole AS IsWhole, journal.build
            FROM queue_claims AS claims
            JOIN journal ON journal.line = (SELECT max(line) FROM journal AS lines WHERE lines.plan_id = claims.plan_id)
            """,
            transaction: transaction)
            .Select(row => (Claim: row, Build: BuildTable.Read(row.Build))).Where(claim => claim.Build is { IsOpen: true })
            .ToLookup(claim => claim.Claim.EntryId);
        return [.. connection.Query<QueueRow>("SELECT id, position, design, added_at AS AddedAt FROM build_queue ORDER BY position, id", transaction: transaction)
            .Where(entry => !held[entry.Id].Any(claim => claim.Claim.IsWhole && claim.Build!.Closed.Count == claim.Claim.Boards))
            .Select(entry => (entry, (string?)held[entry.Id].Select(claim => claim.Claim.PlanId).FirstOrDefault()))];
    }

    /// <summary>A plan that is accepted is to build the entries of its designs, each the first that no other plan builds.</summary>
    public static void Claim(SqliteTransaction transaction, string planId, IReadOnlyList<PlannedBuild> builds)
    {
        var connection = transaction.Connection!;
        connection.Execute("DELETE FROM queue_claims WHERE plan_id = @PlanId", new { PlanId = planId }, transaction);
        var free = Waiting(connection, transaction).Where(waiting => waiting.PlanId is null).Select(waiting => waiting.Entry).ToList();
        foreach (var build in builds)
        {
            if (free.Find(entry => entry.Design == build.Design) is { } entry)
            {
                free.Remove(entry);
                connection.Execute(
                    "INSERT INTO queue_claims (plan_id, entry_id, boards, is_whole) VALUES (@PlanId, @EntryId, @Boards, @IsWhole)",
                    new { PlanId = planId, EntryId = entry.Id, build.Boards, build.IsWhole }, transaction);
            }
        }
    }
}
