using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>Reads stock-takes, and what they have dealt with.</summary>
internal static class StockTakeTable
{
    /// <summary>All rows; what restricts and orders them follows.</summary>
    public const string Rows = "SELECT number, place, started_at AS StartedAt, finished_at AS FinishedAt FROM stock_takes";

    // A line counts as long as it stands: if it was taken back, and that was taken back again, it stands.
    private const string Told = """
        WITH RECURSIVE
          told AS (SELECT line, kind, at FROM journal WHERE stock_take = @Number),
          chain (root, line, depth) AS (
            SELECT line, line, 0 FROM told
            UNION ALL SELECT chain.root, journal.line, chain.depth + 1 FROM chain JOIN journal ON journal.undoes = chain.line)
        SELECT told.line, told.kind, told.at, board.board_id AS BoardId, board.state,
          (SELECT earlier.state FROM journal_boards AS earlier
           WHERE earlier.board_id = board.board_id AND earlier.line < told.line ORDER BY earlier.line DESC LIMIT 1) AS Before
        FROM told JOIN journal_boards AS board ON board.line = told.line
        WHERE (SELECT max(depth) FROM chain WHERE root = told.line) % 2 = 0
        ORDER BY told.line, board.board_id
        """;

    /// <summary>One stock-take, or null.</summary>
    public static StockTake? Find(SqliteTransaction transaction, long number) => transaction.Connection!.QuerySingleOrDefault<StockTakeRow>(
        $"{Rows} WHERE number = @Number", new { Number = number }, transaction)?.ToStockTake();

    /// <summary>How far it is.</summary>
    public static StockTakeState StateOf(SqliteTransaction transaction, StockTake take)
    {
        var connection = transaction.Connection!;
        var seen = connection.Query<SeenRow>(
            "SELECT board_id AS BoardId, finding, at FROM sightings WHERE stock_take = @Number", new { take.Number }, transaction)
            .Select(row => new SeenBoard(row.BoardId, Words.Read<Finding>(row.Finding), Stamp.Read(row.At), null))
            .ToDictionary(board => board.BoardId, StringComparer.Ordinal);
        // What changed a board says more than that it was seen, and the last change says most.
        foreach (var row in connection.Query<SeenRow>(Told, new { take.Number }, transaction))
        {
            seen[row.BoardId] = new SeenBoard(row.BoardId, FindingOf(row, take.Place), Stamp.Read(row.At), row.Line);
        }

        var there = take.FinishedAt is not null ? [] : BoardTable.Read(transaction, connection.Query<BoardRow>(
            $"{BoardTable.Rows} WHERE place = @Place AND status IN ('free', 'reserved') ORDER BY sequence", new { take.Place }, transaction));
        return new StockTakeState(
            take, [.. seen.Values.OrderBy(board => board.At).ThenBy(board => board.BoardId, StringComparer.Ordinal)],
            [.. there.Where(state => !seen.ContainsKey(state.Row.Id)).Select(state => state.ToBoard())]);
    }

    /// <summary>Notes that a board was dealt with and nothing changed.</summary>
    public static void Note(StockChange change, StockTake take, string boardId, Finding finding) => change.Transaction.Connection!.Execute(
        """
        INSERT INTO sightings (stock_take, board_id, finding, at) VALUES (@Number, @BoardId, @Finding, @At)
        ON CONFLICT (stock_take, board_id) DO UPDATE SET finding = excluded.finding, at = excluded.at
        """,
        new { take.Number, BoardId = boardId, Finding = Words.Of(finding), At = Stamp.Of(change.Now) },
        change.Transaction);

    private static Finding FindingOf(SeenRow row, string place)
    {
        var before = row.Before is { } state ? BoardState.Read(state).Row : null;
        var after = row.State is { } left ? BoardState.Read(left).Row : null;
        return before is null ? Finding.Added
            : after?.Status == Words.Of(BoardStatus.Gone) ? Finding.Struck
            : before.Place != place || before.Status == Words.Of(BoardStatus.Gone) ? Finding.Moved
            : Finding.Corrected;
    }
}

/// <summary>A row of <c>stock_takes</c>.</summary>
internal sealed class StockTakeRow
{
    public long Number { get; init; }

    public string Place { get; init; } = "";

    public string StartedAt { get; init; } = "";

    public string? FinishedAt { get; init; }

    public StockTake ToStockTake() => new(Number, Place, Stamp.Read(StartedAt), FinishedAt is { } at ? Stamp.Read(at) : null);
}

/// <summary>What a stock-take found of one board: a row of <c>sightings</c>, or a line of the journal with the board before and after it.</summary>
internal sealed class SeenRow
{
    public long Line { get; init; }

    public string BoardId { get; init; } = "";

    public string Finding { get; init; } = "";

    public string At { get; init; } = "";

    public string? State { get; init; }

    public string? Before { get; init; }
}
