using System.Net;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Host.Tests;

public sealed class JournalTests : OwnService
{
    private const string Ash = """{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400,"defects":[{"kind":"knot","xMm":10,"yMm":20,"lengthMm":30,"widthMm":40}]}""";

    [Fact]
    public async Task Every_change_of_the_stock_is_one_line_and_what_changes_nothing_is_none()
    {
        var id = await LogAsync();
        await Service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{Ash}},{{Ash}}]}""");
        await Service.SendAsync("PUT", $"/v1/boards/{id}", Ash.Replace("1400", "1300", StringComparison.Ordinal));
        await Service.SendAsync("DELETE", $"/v1/boards/{id}");

        await Service.SendAsync("PUT", $"/v1/boards/{id}", Ash);
        await Service.SendAsync("DELETE", $"/v1/boards/{id}");
        await Service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":-1,"widthMm":150,"lengthMm":1400}""");
        await Service.SendAsync("POST", "/v1/board-imports", $$"""{"items":[{{Ash}},{"species":"no such","thicknessMm":1,"widthMm":1,"lengthMm":1}]}""");

        var lines = (await Service.GetAsync("/v1/journal")).GetProperty("items").EnumerateArray().ToList();
        Assert.Equal(["delete", "edit", "import", "log"], lines.Select(line => line.GetProperty("kind").GetString()));
        Assert.Equal([4, 3, 2, 1], lines.Select(line => line.GetProperty("line").GetInt32()));
        Assert.Equal([1, 1, 2, 1], lines.Select(line => line.GetProperty("boards").GetArrayLength()));
        Assert.Equal(id, lines[^1].GetProperty("boards")[0].GetString());
        await AssertAgreesAsync(lines: 4, boards: 2);
    }

    [Fact]
    public async Task The_journal_is_read_page_by_page()
    {
        for (var board = 0; board < 5; board++)
        {
            await LogAsync();
        }

        var first = await Service.GetAsync("/v1/journal?limit=3");
        var rest = await Service.GetAsync($"/v1/journal?limit=3&cursor={first.GetProperty("next").GetString()}");
        Assert.Equal([5, 4, 3, 2, 1], new[] { first, rest }.SelectMany(page => page.GetProperty("items").EnumerateArray()).Select(line => line.GetProperty("line").GetInt32()));
        Assert.Equal(JsonValueKind.Null, rest.GetProperty("next").ValueKind);
    }

    [Theory]
    [InlineData("UPDATE journal SET kind = 'edit'")]
    [InlineData("UPDATE journal_boards SET state = NULL")]
    [InlineData("DELETE FROM journal_boards")]
    [InlineData("DELETE FROM journal WHERE line = 2")]
    [InlineData("INSERT OR REPLACE INTO journal (line, at, kind) VALUES (1, 'now', 'log')")]
    [InlineData("INSERT INTO journal (line, at, kind) VALUES (9, 'later', 'log')")]
    [InlineData("INSERT OR REPLACE INTO journal_boards SELECT line, board_id, NULL FROM journal_boards")]
    [InlineData("INSERT INTO journal_boards (line, board_id, state) VALUES (1, 'ZZZ', NULL)")]
    public async Task The_database_itself_refuses_to_change_the_journal(string sql)
    {
        await LogAsync();
        await LogAsync();
        using var connection = Connect();
        var before = await ReadAsync(connection);

        Assert.Equal(SqliteConstraintTrigger, Assert.Throws<SqliteException>(() => connection.Execute(sql)).SqliteExtendedErrorCode);

        Assert.Equal(before, await ReadAsync(connection));
    }

    [Theory]
    [InlineData("UPDATE boards SET length_ticks = 1000 WHERE sequence = 1", "lengthTicks")]
    [InlineData("DELETE FROM board_defects WHERE board_sequence = 1", "defects")]
    [InlineData("DELETE FROM boards WHERE sequence = 1", "not in the inventory")]
    [InlineData("UPDATE boards SET id = 'XXX' WHERE sequence = 1", "no such board")]
    public async Task The_check_finds_what_was_changed_past_the_journal(string sql, string told)
    {
        await LogAsync();
        await LogAsync();
        await AssertAgreesAsync(lines: 2, boards: 2);
        using var connection = Connect();
        connection.Execute($"PRAGMA foreign_keys = ON; {sql}");

        var check = await Service.GetAsync("/v1/journal/check");

        Assert.False(check.GetProperty("agrees").GetBoolean());
        Assert.Contains(check.GetProperty("differences").EnumerateArray(), difference =>
            difference.GetProperty("detail").GetString()!.Contains(told, StringComparison.Ordinal));
    }

    // https://www.sqlite.org/rescode.html#constraint_trigger
    private const int SqliteConstraintTrigger = 1811;

    private async Task<string> LogAsync() =>
        (await Service.ReadAsync(await Service.SendAsync("POST", "/v1/boards", Ash), HttpStatusCode.Created)).GetProperty("id").GetString()!;

    private async Task AssertAgreesAsync(int lines, int boards)
    {
        var check = await Service.GetAsync("/v1/journal/check");
        Assert.Equal(
            (true, lines, boards),
            (check.GetProperty("agrees").GetBoolean(), check.GetProperty("lines").GetInt32(), check.GetProperty("boards").GetInt32()));
    }

    private static async Task<IReadOnlyList<string>> ReadAsync(SqliteConnection connection) =>
        [.. await connection.QueryAsync<string>("SELECT line || kind || at FROM journal UNION ALL SELECT line || board_id || coalesce(state, '-') FROM journal_boards")];

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection($"Data Source={Service.DatabasePath}");
        connection.Open();
        return connection;
    }
}
