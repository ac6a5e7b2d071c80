using System.Text.Json.Nodes;
using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Storage;

/// <summary>Reads the journal of the stock.</summary>
/// <param name="database">Where it is kept.</param>
public sealed class JournalStore(Database database)
{
    /// <summary>All lines; what restricts and orders them follows.</summary>
    internal const string Lines = """
        SELECT journal.line, journal.at, journal.kind, journal.plan_id AS PlanId, journal.build, journal.undoes, journal.stock_take AS StockTake, later.line AS UndoneBy
        FROM journal LEFT JOIN journal AS later ON later.undoes = journal.line
        """;

    /// <summary>Up to <paramref name="limit"/> lines, newest first, before a place in the journal, and the place before which more follow.</summary>
    public (IReadOnlyList<JournalLine> Lines, long? Next) List(long? before, int limit)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rows = connection.Query<LineRow>(
            $"{Lines} WHERE @Before IS NULL OR journal.line < @Before ORDER BY journal.line DESC LIMIT @Rows",
            new { Before = before, Rows = limit + 1 },
            transaction).AsList();
        var page = rows.Take(limit).ToList();
        var boards = connection.Query<LineBoardRow>(
            "SELECT line, board_id AS Id FROM journal_boards WHERE line IN @Lines ORDER BY line, board_id",
            new { Lines = page.Select(row => row.Line) },
            transaction).ToLookup(board => board.Line, board => board.Id);
        return (
            [.. page.Select(row => row.ToLine([.. boards[row.Line]]))],
            rows.Count > limit ? page[^1].Line : null);
    }

    /// <summary>Rebuilds the inventory from the journal alone, and compares it with the one that is stored.</summary>
    public JournalCheck Check()
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var rebuilt = Rebuild(connection, transaction);
        var stored = BoardTable.Read(transaction, connection.Query<BoardRow>($"{BoardTable.Rows} ORDER BY sequence", transaction: transaction))
            .ToDictionary(state => state.Row.Id, StringComparer.Ordinal);
        var differences = rebuilt.Keys.Union(stored.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(id => Difference(id, rebuilt.GetValueOrDefault(id), stored.GetValueOrDefault(id))).OfType<JournalDifference>();
        return new JournalCheck(
            connection.ExecuteScalar<long>("SELECT coalesce(max(line), 0) FROM journal", transaction: transaction), rebuilt.Count, [.. differences]);
    }

    // With max() SQLite takes the other columns from the row that has it.
    private static Dictionary<string, BoardState> Rebuild(SqliteConnection connection, SqliteTransaction transaction) =>
        connection.Query<LineBoardRow>(
            "SELECT board_id AS Id, state, max(line) AS Line FROM journal_boards GROUP BY board_id", transaction: transaction)
        .Where(last => last.State is not null)
        .ToDictionary(last => last.Id, last => BoardState.Read(last.State!), StringComparer.Ordinal);

    private static JournalDifference? Difference(string id, BoardState? rebuilt, BoardState? stored)
    {
        if (rebuilt is null || stored is null)
        {
            return new JournalDifference(id, rebuilt is null
                ? "It is in the inventory, but by the journal there is no such board."
                : "By the journal there is such a board, but it is not in the inventory.");
        }

        var (told, found) = (Members(rebuilt), Members(stored));
        var unlike = found.Keys.Where(name => told[name] != found[name]).ToList();
        return unlike.Count == 0 ? null : new JournalDifference(
            id, string.Join(" ", unlike.Select(name => $"By the journal its {name} is {told[name]}, in the inventory {found[name]}.")));
    }

    private static Dictionary<string, string> Members(BoardState state)
    {
        var json = JsonNode.Parse(state.ToJson())!.AsObject();
        var row = json["row"]!.AsObject();
        return row.Concat(json.Where(member => member.Key != "row"))
            .ToDictionary(member => member.Key, member => member.Value?.ToJsonString() ?? "nothing", StringComparer.Ordinal);
    }
}
