using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>Takes in tables of boards: new boards and changed ones, all or none, and the same new boards only once.</summary>
/// <param name="database">Where boards are kept.</param>
/// <param name="clock">Says when.</param>
public sealed class BoardImportStore(Database database, TimeProvider clock)
{
    /// <summary>Adds and changes boards.</summary>
    /// <param name="added">The new boards.</param>
    /// <param name="changed">The boards that change: as they were when the table was read, and as they should be.</param>
    /// <param name="mark">The mark of the new boards' content (64 hexadecimal digits); null if there are none.</param>
    /// <param name="again">Whether to add the new boards though the same were imported before.</param>
    /// <returns>The boards that were added; those that were changed; and when the same were imported before, if that is why none was added.</returns>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Conflict"/>: a board is no longer as it was when the table was read, or a plan holds it.</exception>
    public (IReadOnlyList<Board> Added, IReadOnlyList<Board> Changed, DateTimeOffset? ImportedBefore) Import(
        IReadOnlyList<Board> added, IReadOnlyList<(Board Before, Board After)> changed, string? mark, bool again)
    {
        using var change = StockChange.Begin(database, clock);
        var connection = change.Transaction.Connection!;
        var before = mark is null || again ? null
            : connection.ExecuteScalar<string?>("SELECT imported_at FROM board_imports WHERE mark = @Mark", new { Mark = mark }, change.Transaction);
        var replaced = new List<Board>();
        foreach (var (old, now) in changed)
        {
            if (change.Find(old.Id) is not { } state || state.ToJson() != BoardState.Of(old, state.Row.Sequence).ToJson())
            {
                throw new OffcutsException(ErrorCode.Conflict, $"Board {old.Id} was changed meanwhile: nothing was imported. Export again and make your changes anew.");
            }

            replaced.Add(BoardStore.Replace(change, now, state));
        }

        var made = before is null && added.Count > 0 ? change.Add(added) : [];
        if (mark is not null && made.Count > 0)
        {
            connection.Execute(
                "INSERT INTO board_imports (mark, imported_at, boards) VALUES (@Mark, @At, @Boards) ON CONFLICT (mark) DO UPDATE SET imported_at = excluded.imported_at",
                new { Mark = mark, At = Stamp.Of(change.Now), Boards = made.Count },
                change.Transaction);
        }

        if (made.Count + changed.Count > 0)
        {
            change.Commit(JournalKind.Import);
        }

        return (made, replaced, before is null ? null : Stamp.Read(before));
    }
}
