using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class LogTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_line_is_logged_as_it_is_said_and_told_back()
    {
        var logged = await offcuts.RunAsync("boards log 3 @ 3/4 x 5 1/2 x ~36 ash, rack 2".Split(' '));

        Assert.True(logged.Code == 0, logged.Err);
        Assert.EndsWith("  3 of white ash, rough, 3/4 x 5 1/2 x about 36 in, place rack 2\n", logged.Out, StringComparison.Ordinal);
        Assert.Contains("3/4 x 5 1/2 x about 36 in    3  rough", (await offcuts.RunAsync("boards", "list")).Out, StringComparison.Ordinal);
        // Whoever writes a size has measured it.
        var edited = await offcuts.RunAsync("boards", "edit", logged.Out[..3], "--size", "3/4 x 5 1/2 x 35 7/8");
        Assert.Contains("3/4 x 5 1/2 x 35 7/8 in", edited.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_understood_is_pointed_at_under_its_column_and_nothing_of_the_file_is_logged()
    {
        var file = Path.Combine(offcuts.Folder, "pile.txt");
        await File.WriteAllTextAsync(file, "walnut, rack 2\n4/4 x 7 x 62\n4/4 rouhg x 7 x 30\n");

        var refused = await offcuts.RunAsync("boards", "log", "--file", file);

        Assert.Equal(2, refused.Code);
        Assert.Empty(refused.Out);
        Assert.Equal(
            "line 3, column 5: 'rouhg' is not understood. Did you mean rough?\n  4/4 rouhg x 7 x 30\n      ^\n"
            + "error: 1 line is not understood: nothing was logged. See 'offcuts help quick-lines'.\n",
            refused.Err);
        Assert.Empty(Items((await offcuts.RunAsync("boards", "list", "--json")).Out));

        await File.WriteAllTextAsync(file, "walnut, rack 2\n4/4 x 7 x 62\n4/4 rough x 7 x 30\n");
        var logged = await offcuts.RunAsync("boards", "log", "--file", file);
        Assert.True(logged.Code == 0, logged.Err);
        Assert.Equal(2, Items((await offcuts.RunAsync("boards", "list", "--json")).Out).Count);
    }

    [Fact]
    public async Task Lines_come_from_standard_input_too_and_a_dry_run_logs_none()
    {
        var dry = await offcuts.RunAsync(["boards", "log", "--dry-run"], "4/4 x 7 x 62 walnut\n4/4 x 7 walnut\n", null);
        Assert.Equal(2, dry.Code);
        Assert.Equal("black walnut, rough, 1 x 7 x 62 in\n", dry.Out);
        Assert.Contains("line 2, column 15", dry.Err, StringComparison.Ordinal);

        var json = await offcuts.RunAsync(["boards", "log", "--json"], "4/4 x 7 x 62 walnut\n", null);
        using var result = JsonDocument.Parse(json.Out);
        Assert.True(result.RootElement.GetProperty("logged").GetBoolean());

        var wrong = await offcuts.RunAsync(["boards", "log", "--json"], "4/4 x 7 walnut\n", null);
        Assert.Equal(2, wrong.Code);
        Assert.Contains("line 1, column 15", wrong.Err, StringComparison.Ordinal);
        Assert.Single(Items((await offcuts.RunAsync("boards", "list", "--json")).Out));
    }

    [Fact]
    public async Task A_line_and_a_file_at_once_are_refused() =>
        Assert.Equal(2, (await offcuts.RunAsync("boards", "log", "ash", "--file", "pile.txt")).Code);

    [TerminalFact]
    public async Task At_a_terminal_line_after_line_is_asked_for_and_the_last_can_be_taken_back()
    {
        using var process = offcuts.Start(Needing.Script, ["-qec", "\"$OFFCUTS_PROGRAM\" boards log", "/dev/null"]);
        // Up recalls the line before, which is logged again; the one after the slip is taken back.
        await process.StandardInput.WriteAsync("4/4 x 7 x 62 walnut, rack 2\r\u001b[A\u001b[F\r4/4 x 7 rouhg x 1\r5/4 x 3 x 20\rundo\r2 @ 5/4 x 3 x 21\rtotal\rdone\r");
        await process.StandardInput.FlushAsync();
        var outcome = await Program.FinishAsync(process);

        Assert.Contains("'rouhg' is not understood", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("Took back", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("Logged 4 pieces", outcome.Out, StringComparison.Ordinal);
        var boards = Items((await offcuts.RunAsync("boards", "list", "--json")).Out);
        Assert.Equal([62m, 62m, 21m], boards.Select(board => board.GetProperty("lengthMm").GetDecimal() / 25.4m));
        Assert.All(boards, board => Assert.Equal("rack 2", board.GetProperty("place").GetString()));
        // By the journal's own undo: the line that logged it says so.
        Assert.Contains("log (undone by 4)", (await offcuts.RunAsync("journal", "list")).Out, StringComparison.Ordinal);
    }

    private static List<JsonElement> Items(string json) => [.. JsonDocument.Parse(json).RootElement.GetProperty("items").EnumerateArray()];
}
