using System.Globalization;
using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>Takes lines of the journal back, as long as nothing is built on them.</summary>
/// <param name="database">Where it is kept.</param>
/// <param name="clock">Says when.</param>
public sealed class UndoStore(Database database, TimeProvider clock)
{
    /// <summary>Makes every board and the plan that a line touched what they were before it, which is a line of its own.</summary>
    /// <param name="line">The line's number.</param>
    /// <returns>The number of the new line; null if there is no such line.</returns>
    /// <exception cref="OffcutsException">It was taken back before, or something came after it.</exception>
    public long? Undo(long line)
    {
        using var change = StockChange.Begin(database, clock);
        var connection = change.Transaction.Connection!;
        var told = connection.QuerySingleOrDefault<LineRow>($"{JournalStore.Lines} WHERE journal.line = @Line", new { Line = line }, change.Transaction);
        if (told is null)
        {
            return null;
        }

        Refuse(told.Kind == Words.Of(JournalKind.Opening), line, () => "it is what was there before the journal. Remove the boards instead.");
        Refuse(told.UndoneBy is not null, line, () => string.Create(CultureInfo.InvariantCulture, $"line {told.UndoneBy} has done so already."));
        Build? before = null;
        if (told.PlanId is { } planId)
        {
            Refuse(BuildTable.ToJson(change.FindBuild(planId)) != BuildTable.ToJson(BuildTable.Read(told.Build)), line, () => LaterText(LaterOfPlan(change, planId), $"plan {planId}"));
            before = BuildTable.Before(change.Transaction, planId, line);
        }

        foreach (var board in connection.Query<LineBoardRow>(
            "SELECT board_id AS Id, state FROM journal_boards WHERE line = @Line ORDER BY board_id", new { Line = line }, change.Transaction).AsList())
        {
            var after = board.State is null ? null : BoardState.Read(board.State).ToJson();
            Refuse(change.Find(board.Id)?.ToJson() != after, line, () => LaterText(LaterOfBoard(change, board.Id), board.Id));
            Restore(change, board.Id, line);
        }

        return change.Commit(JournalKind.Undo, told.PlanId, before, line);
    }

    private static void Restore(StockChange change, string id, long line)
    {
        var state = change.Transaction.Connection!.QuerySingleOrDefault<string>(
            "SELECT state FROM journal_boards WHERE board_id = @Id AND line < @Line ORDER BY line DESC LIMIT 1", new { Id = id, Line = line }, change.Transaction);
        if (state is null)
        {
            change.Erase(id);
        }
        else
        {
            change.Write(BoardState.Read(state));
        }
    }

    private static void Refuse(bool isSo, long line, Func<string> why)
    {
        if (isSo)
        {
            throw new OffcutsException(ErrorCode.Conflict, string.Create(CultureInfo.InvariantCulture, $"Line {line} cannot be taken back: {why()}"));
        }
    }

    private static LineRow LaterOfPlan(StockChange change, string planId) => change.Transaction.Connection!.QueryFirst<LineRow>(
        "SELECT line, kind FROM journal WHERE plan_id = @PlanId ORDER BY line DESC LIMIT 1", new { PlanId = planId }, change.Transaction);

    private static LineRow LaterOfBoard(StockChange change, string id) => change.Transaction.Connection!.QueryFirst<LineRow>(
        "SELECT line, kind FROM journal WHERE line = (SELECT max(line) FROM journal_boards WHERE board_id = @Id)", new { Id = id }, change.Transaction);

    private static string LaterText(LineRow later, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"line {later.Line} ({later.Kind}) has changed {what} since. Take that back first.");
}
