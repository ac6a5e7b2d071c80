using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>What one line of the journal left of a board.</summary>
/// <param name="Line">The line.</param>
/// <param name="Build">How far the build of the line's plan was then; null for none.</param>
/// <param name="After">The board after it; null once it is out of the inventory.</param>
public sealed record HistoryLine(JournalLine Line, Build? Build, Board? After);

/// <summary>What the journal tells of single boards, and of the pile as a whole.</summary>
/// <param name="database">Where it is kept.</param>
public sealed class HistoryStore(Database database)
{
    /// <summary>The lines about a board, oldest first; none if there was never such a board.</summary>
    public IReadOnlyList<HistoryLine> ListOf(string boardId)
    {
        using var connection = database.Connect();
        return [.. connection.Query<LineRow>(
            """
            SELECT journal.line, journal.at, journal.kind, journal.plan_id AS PlanId, journal.build, journal.undoes, journal.stock_take AS StockTake, later.line AS UndoneBy, board.state
            FROM journal_boards AS board JOIN journal ON journal.line = board.line LEFT JOIN journal AS later ON later.undoes = journal.line
            WHERE board.board_id = @Id ORDER BY journal.line
            """,
            new { Id = boardId }).Select(row => new HistoryLine(
                row.ToLine([boardId]), BuildTable.Read(row.Build), row.State is { } state ? BoardState.Read(state).ToBoard() : null))];
    }

    /// <summary>
    /// What lay on the rack at the end of each day on which that changed. A board counts from the day on which it was logged, even if it
    /// came into the journal later.
    /// </summary>
    public IReadOnlyList<PilePoint> ListPile()
    {
        using var connection = database.Connect();
        var rows = connection.Query<LineRow>(
            """
            SELECT journal.at, board.board_id AS BoardId, board.state
            FROM journal_boards AS board JOIN journal ON journal.line = board.line ORDER BY journal.line
            """);
        var boards = new Dictionary<string, (int Boards, decimal Volume)>(StringComparer.Ordinal);
        var changes = new SortedDictionary<DateOnly, (int Boards, decimal Volume)>();
        foreach (var row in rows)
        {
            var board = row.State is { } state ? BoardState.Read(state).ToBoard() : null;
            var day = Day(Stamp.Read(row.At));
            if (board is not null && !boards.ContainsKey(row.BoardId) && Day(board.LoggedAt) < day)
            {
                day = Day(board.LoggedAt);
            }

            var was = boards.GetValueOrDefault(row.BoardId);
            var now = board?.Status is BoardStatus.Free or BoardStatus.Reserved
                ? (board.Quantity, board.Quantity * BoardMeasure.CubicMetres(board.Size))
                : default;
            boards[row.BoardId] = now;
            var change = changes.GetValueOrDefault(day);
            changes[day] = (change.Boards + now.Item1 - was.Boards, change.Volume + now.Item2 - was.Volume);
        }

        return Summed(changes);
    }

    private static List<PilePoint> Summed(SortedDictionary<DateOnly, (int Boards, decimal Volume)> changes)
    {
        var points = new List<PilePoint>();
        var total = (Boards: 0, Volume: 0m);
        foreach (var (day, change) in changes.Where(change => change.Value != default))
        {
            total = (total.Boards + change.Boards, total.Volume + change.Volume);
            points.Add(new PilePoint(day, total.Boards, total.Volume));
        }

        return points;
    }

    private static DateOnly Day(DateTimeOffset time) => DateOnly.FromDateTime(time.UtcDateTime);
}
