using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class StockTakeTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_place_is_walked_through_by_single_commands()
    {
        var ids = await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash\n3/4 x 5 x 24 ash\n1 x 6 x 40 walnut, bin\n");
        Assert.Equal(1, (await offcuts.RunAsync("stocktake", "show")).Code);
        var start = await offcuts.RunAsync("stocktake", "start", "rack 2");
        Assert.True(start.Code == 0, start.Err);
        Assert.Equal(4, start.Out.Count(sign => sign == '\n'));
        Assert.Contains("3 entries of rack 2 are unseen", start.Err, StringComparison.Ordinal);

        var confirmed = await offcuts.RunAsync("stocktake", "confirm", ids[0], ids[3]);
        Assert.Equal($"{ids[0]}  white ash, rough, 3/4 x 5 x 36 in: confirmed\n{ids[3]}  black walnut, rough, 1 x 6 x 40 in: moved\n", confirmed.Out);
        var corrected = await offcuts.RunAsync("stocktake", "correct", ids[1], "--size", "3/4 x 5 x 28 1/2");
        Assert.Equal($"{ids[1]}  white ash, rough, 3/4 x 5 x 28 1/2 in: corrected\n", corrected.Out);
        var added = await offcuts.RunAsync("stocktake", "add", "3/4", "x", "4", "x", "20", "cherry");
        Assert.EndsWith("  black cherry, rough, 3/4 x 4 x 20 in: added\n", added.Out, StringComparison.Ordinal);

        var undecided = await offcuts.RunAsync("stocktake", "finish");
        Assert.Equal(2, undecided.Code);
        Assert.Contains("--strike or --leave", undecided.Err, StringComparison.Ordinal);
        var finished = await offcuts.RunAsync("stocktake", "finish", "--strike");
        Assert.True(finished.Code == 0, finished.Err);
        Assert.Contains("is finished: 1 confirmed, 1 moved, 1 corrected, 1 added, 1 struck.", finished.Err, StringComparison.Ordinal);
        Assert.Contains("gone", (await offcuts.RunAsync("boards", "show", ids[2])).Out, StringComparison.Ordinal);
        Assert.Contains("edit (stock-take 1)", (await offcuts.RunAsync("journal", "list")).Out, StringComparison.Ordinal);
        Assert.Contains("rack 2", (await offcuts.RunAsync("stocktake", "list")).Out, StringComparison.Ordinal);

        // By the journal what was struck off is back.
        Assert.Equal(0, (await offcuts.RunAsync("journal", "undo")).Code);
        Assert.Contains("free", (await offcuts.RunAsync("boards", "show", ids[2])).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_several_that_are_open_the_place_must_be_said_and_nobody_is_asked_where_nobody_is()
    {
        await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash, bin\n");
        await offcuts.RunAsync("stocktake", "start", "rack 2");
        await offcuts.RunAsync("stocktake", "start", "bin");
        var which = await offcuts.RunAsync("stocktake", "finish", "--leave");
        Assert.Equal(2, which.Code);
        Assert.Contains("--place (bin, rack 2)", which.Err, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("stocktake", "finish", "--leave", "--strike", "--place", "bin")).Code);
        Assert.Equal(0, (await offcuts.RunAsync("stocktake", "finish", "--leave", "--place", "bin")).Code);
        Assert.Equal(1, (await offcuts.RunAsync("stocktake", "show", "--place", "bin")).Code);
        using var left = JsonDocument.Parse((await offcuts.RunAsync("stocktake", "show", "--json")).Out);
        Assert.Equal("rack 2", left.RootElement.GetProperty("place").GetString());
        var nobody = await offcuts.RunAsync("stocktake");
        Assert.Equal(2, nobody.Code);
        Assert.Contains("Nobody is to be asked here", nobody.Err, StringComparison.Ordinal);
        var wrong = await offcuts.RunAsync("stocktake", "add", "3/4 x 5 x 36 wallnut");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("Did you mean walnut?", wrong.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Several_ids_are_told_as_one_array_and_one_id_as_an_object()
    {
        var ids = await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash\n3/4 x 5 x 24 ash\n3/4 x 5 x 18 ash\n1 x 6 x 40 walnut, bin\n");
        await offcuts.RunAsync("stocktake", "start", "rack 2");
        using var several = JsonDocument.Parse((await offcuts.RunAsync("stocktake", "confirm", ids[1], ids[0], "--json")).Out);
        Assert.Equal([ids[1], ids[0]], several.RootElement.EnumerateArray().Select(step => step.GetProperty("board").GetProperty("id").GetString()));
        Assert.Equal([3, 2], several.RootElement.EnumerateArray().Select(step => step.GetProperty("unseen").GetInt32()));
        using var one = JsonDocument.Parse((await offcuts.RunAsync("stocktake", "strike", ids[2], "--json")).Out);
        Assert.Equal("struck", one.RootElement.GetProperty("finding").GetString());

        // As it is written on the end grain: in any case, with spaces between the signs.
        Assert.Equal(0, (await offcuts.RunAsync("stocktake", "confirm", string.Join(' ', ids[1].ToLowerInvariant().AsEnumerable()))).Code);

        // The last lies elsewhere, so it is not struck off: what was done before is told all the same.
        var refused = await offcuts.RunAsync("stocktake", "strike", ids[3], ids[4], "--json");
        Assert.Equal(5, refused.Code);
        using var before = JsonDocument.Parse(refused.Out);
        Assert.Equal(ids[3], before.RootElement.EnumerateArray().Single().GetProperty("board").GetProperty("id").GetString());
        using var fault = JsonDocument.Parse(refused.Err.TrimEnd().Split('\n')[^1]);
        Assert.Equal("conflict", fault.RootElement.GetProperty("code").GetString());
        Assert.Empty((await offcuts.RunAsync("stocktake", "confirm", ids[0], "ZZZ", "--json")).Out);
    }

    [Fact]
    public async Task A_slip_in_the_place_begins_nothing()
    {
        await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash, bin\n");
        var slip = await offcuts.RunAsync("stocktake", "start", "rak 2");
        Assert.Equal(1, slip.Code);
        Assert.Contains("The book knows no place 'rak 2'. Did you mean 'rack 2'? If it is a new one, give --new.", slip.Err, StringComparison.Ordinal);
        Assert.Contains("There are bin, rack 2.", (await offcuts.RunAsync("stocktake", "start", "shed")).Err, StringComparison.Ordinal);
        Assert.Contains("There was no stock-take yet", (await offcuts.RunAsync("stocktake", "list")).Err, StringComparison.Ordinal);
        Assert.Equal(0, (await offcuts.RunAsync("stocktake", "start", "shed", "--new")).Code);
        // From then on it is known.
        Assert.Equal(0, (await offcuts.RunAsync("stocktake", "start", "shed")).Code);
    }

    [TerminalFact]
    public async Task A_bare_size_is_asked_about_and_short_answers_are_understood()
    {
        var ids = await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash\n");
        await offcuts.RunAsync("stocktake", "start", "rack 2");
        var told = await AnswerAsync("?\r4/4 x 3 x 20 cherry\r3/4 x 5 x 35\rsize 3/4 x 5 x 35\radd 3/4 x 4 x 20\rn\rdone\r");
        Assert.Contains("a board that is not in the book", told, StringComparison.Ordinal);
        Assert.Contains($"Is that {ids[0]}, or another board? Write 'size 3/4 x 5 x 35' if {ids[0]} is of that size, 'add 3/4 x 5 x 35' for a board that is not in the book.", told, StringComparison.Ordinal);
        Assert.Contains($"{ids[0]}  white ash, rough, 3/4 x 5 x 35 in: corrected", told, StringComparison.Ordinal);
        Assert.Contains("black cherry, rough, 3/4 x 4 x 20 in: added", told, StringComparison.Ordinal);
        Assert.Contains($"{ids[1]}  white ash, rough, 3/4 x 5 x 30 in: struck", told, StringComparison.Ordinal);
    }

    [TerminalFact]
    public async Task At_a_terminal_board_after_board_is_asked_for_and_one_may_stop_and_go_on()
    {
        var ids = await LogAsync("3/4 x 5 x 36 ash, rack 2\n3/4 x 5 x 30 ash\n3/4 x 5 x 24 ash\n3/4 x 5 x 18 ash\n1 x 6 x 40 walnut, bin\n");
        await offcuts.RunAsync("stocktake", "start", "rack 2");
        // The first is there, which is taken back and said again; the second is shorter; a new one with a slip, then without; then stop.
        var first = await AnswerAsync("yes\rundo\r\rsize 3/4 x 5 x 29\r4/4 x 3 x 20 chery\r4/4 x 3 x 20 cherry\rdone\r");
        Assert.Contains($"{ids[0]}  white ash, rough, 3/4 x 5 x 36 in?", first, StringComparison.Ordinal);
        Assert.Contains($"Took back {ids[0]}.", first, StringComparison.Ordinal);
        Assert.Contains("'chery' is not understood", first, StringComparison.Ordinal);
        Assert.Contains("2 unseen. Go on with 'offcuts stocktake'.", first, StringComparison.Ordinal);

        // One that the book has elsewhere; what is asked for later; and what is unseen in the end is asked about.
        var second = await AnswerAsync($"{ids[4]}\rlater\rstrike\rfinish\rno\rfinish\rleave\r");
        Assert.Contains($"{ids[4]}  black walnut, rough, 1 x 6 x 40 in: moved", second, StringComparison.Ordinal);
        Assert.Contains($"{ids[3]}  white ash, rough, 3/4 x 5 x 18 in: struck", second, StringComparison.Ordinal);
        Assert.Contains("is finished: 1 confirmed, 1 corrected, 1 added, 1 moved, 1 struck, 1 left.", second, StringComparison.Ordinal);
        var rack = Items((await offcuts.RunAsync("boards", "list", "--place", "rack 2", "--status", "free", "--json")).Out);
        Assert.Equal([36m, 29m, 24m, 40m, 20m], rack.Select(board => board.GetProperty("lengthMm").GetDecimal() / 25.4m));
    }

    private async Task<string> AnswerAsync(string answers)
    {
        using var process = offcuts.Start(Needing.Script, ["-qec", "\"$OFFCUTS_PROGRAM\" stocktake", "/dev/null"]);
        await process.StandardInput.WriteAsync(answers);
        await process.StandardInput.FlushAsync();
        return (await Program.FinishAsync(process)).Out;
    }

    private async Task<List<string>> LogAsync(string lines) =>
        [.. (await offcuts.RunAsync(["boards", "log"], lines, null)).Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line[..3])];

    private static List<JsonElement> Items(string json) => [.. JsonDocument.Parse(json).RootElement.GetProperty("items").EnumerateArray()];
}
