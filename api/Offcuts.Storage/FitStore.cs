using Dapper;

namespace Offcuts.Storage;

/// <summary>What a design came to when it was last planned to be ranked.</summary>
/// <param name="Mark">Hash of all but the boards that it depends on: 64 hexadecimal digits.</param>
/// <param name="Seen">The boards that the design could touch, as text.</param>
/// <param name="Outcome">What it came to, as JSON.</param>
public sealed record StoredFit(string Mark, string Seen, string Outcome);

/// <summary>The cache of rankings: the outcomes used last.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when one is used.</param>
public sealed class FitStore(Database database, TimeProvider clock)
{
    /// <summary>So many are kept, of a few kilobytes each: as many as a large library has designs.</summary>
    public const int MostKept = 2_000;

    /// <summary>The outcome of a mark, or null.</summary>
    public StoredFit? Find(string mark)
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<FitRow>("SELECT mark, seen, outcome FROM fit_outcomes WHERE mark = @Mark", new { Mark = mark })?.ToFit();
    }

    /// <summary>Keeps new outcomes, notes that others were used, and forgets those that were not used for longest.</summary>
    /// <param name="made">New ones.</param>
    /// <param name="used">Marks of others that were used.</param>
    public void Keep(IReadOnlyList<StoredFit> made, IReadOnlyList<string> used)
    {
        var now = Stamp.Of(clock.GetUtcNow());
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        foreach (var fit in made)
        {
            connection.Execute(
                """
                INSERT INTO fit_outcomes (mark, seen, outcome, used_at) VALUES (@Mark, @Seen, @Outcome, @Now)
                ON CONFLICT (mark) DO UPDATE SET seen = excluded.seen, outcome = excluded.outcome, used_at = excluded.used_at
                """,
                new { fit.Mark, fit.Seen, fit.Outcome, Now = now },
                transaction);
        }

        foreach (var mark in used)
        {
            connection.Execute("UPDATE fit_outcomes SET used_at = @Now WHERE mark = @Mark", new { Mark = mark, Now = now }, transaction);
        }

        connection.Execute(
            "DELETE FROM fit_outcomes WHERE mark IN (SELECT mark FROM fit_outcomes ORDER BY used_at DESC, mark LIMIT -1 OFFSET @Most)",
            new { Most = MostKept },
            transaction);
        transaction.Commit();
    }
}
