using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class BoardsTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task An_id_may_be_typed_in_small_letters()
    {
        var id = (await offcuts.RunAsync("boards", "add", "1 x 6 x 48", "--species", "white-ash")).Out.Trim().ToLowerInvariant();

        var edited = await offcuts.RunAsync("boards", "edit", id, "--place", "rack 2");
        Assert.True(edited.Code == 0, edited.Err);
        Assert.Contains("rack 2", (await offcuts.RunAsync("boards", "show", id)).Out, StringComparison.Ordinal);
        Assert.Equal(0, (await offcuts.RunAsync("boards", "remove", id, "--yes")).Code);
        Assert.Equal(1, (await offcuts.RunAsync("boards", "show", id)).Code);
    }

    [Fact]
    public async Task Defects_are_recorded_replaced_and_taken_off()
    {
        var id = (await offcuts.RunAsync(
            "boards", "add", "1 x 6 x 48", "--species", "white-ash", "--defect", "knot 10..12 x 1..2", "--defect", "split 4in at the right end")).Out.Trim();
        var shown = (await offcuts.RunAsync("boards", "show", id)).Out;
        Assert.Contains("knot, 2\" along by 1\" across, 10\" from the left end and 1\" from the lower edge", shown, StringComparison.Ordinal);
        Assert.Contains("split, 4\" along by 6\" across, 44\" from the left end", shown, StringComparison.Ordinal);

        var replaced = await offcuts.RunAsync("boards", "edit", id, "--defect", "stain 0..3");
        Assert.Contains("stain, 3\" along by 6\" across", replaced.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("knot", replaced.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Defect", (await offcuts.RunAsync("boards", "edit", id, "--defect", "none")).Out, StringComparison.Ordinal);

        var wrong = await offcuts.RunAsync("boards", "add", "1 x 6 x 48", "--species", "white-ash", "--defect", "knot");
        Assert.Contains("--defect: 'knot' is not a defect", wrong.Err, StringComparison.Ordinal);
        Assert.NotEqual(0, wrong.Code);
    }

    [Fact]
    public async Task Boards_are_logged_listed_changed_and_removed()
    {
        var added = await offcuts.RunAsync("boards", "add", "3/4 x 5 1/2 x 36", "--species", "white-ash", "--place", "rack 2");
        var id = added.Out.Trim();
        Assert.True(added.Code == 0, added.Err);
        Assert.Contains($"Write {id} on its end grain", added.Err, StringComparison.Ordinal);
        // Unquoted words make a size too.
        Assert.Equal(0, (await offcuts.RunAsync("boards add 18mm x 300 x 900 --species white-ash -q".Split(' '))).Code);

        var list = await offcuts.RunAsync("boards", "list", "--min-length", "3ft");
        Assert.Equal(
            $"ID   SPECIES                   SIZE  QTY  SURFACE  LOOK   STATUS  PLACE\n{id}  white ash  3/4 x 5 1/2 x 36 in    1  rough    clear  free    rack 2\n",
            list.Out);
        Assert.Empty(list.Err);

        var edited = await offcuts.RunAsync("boards", "edit", id, "--size", "3/4 x 5 1/2 x 30 1/4", "--status", "reserved");
        Assert.Contains("3/4 x 5 1/2 x 30 1/4 in", edited.Out, StringComparison.Ordinal);
        Assert.Contains("rack 2", edited.Out, StringComparison.Ordinal);

        Assert.Equal(0, (await offcuts.RunAsync("boards", "remove", id, "--yes")).Code);
        Assert.Equal(1, (await offcuts.RunAsync("boards", "show", id)).Code);
    }

    [Fact]
    public async Task Removing_asks_and_where_nobody_can_be_asked_names_the_option_and_changes_nothing()
    {
        var id = (await offcuts.RunAsync("boards", "add", "1 x 2 x 30", "--species", "white-ash")).Out.Trim();

        var refused = await offcuts.RunAsync("boards", "remove", id);
        var dry = await offcuts.RunAsync("boards", "remove", id, "--dry-run");

        Assert.Equal(2, refused.Code);
        Assert.Contains("--yes", refused.Err, StringComparison.Ordinal);
        Assert.Equal(0, dry.Code);
        Assert.Equal(0, (await offcuts.RunAsync("boards", "show", id)).Code);
    }

    [Fact]
    public async Task Json_is_the_wires_JSON_and_all_of_standard_output()
    {
        await offcuts.RunAsync("boards", "add", "1 x 2 1/2 x 30", "--species", "white-ash");

        var list = await offcuts.RunAsync("boards", "list", "--json");

        using var page = JsonDocument.Parse(list.Out);
        var board = Assert.Single(page.RootElement.GetProperty("items").EnumerateArray());
        Assert.Equal(63.5m, board.GetProperty("widthMm").GetDecimal());
        Assert.Equal(JsonValueKind.Null, page.RootElement.GetProperty("next").ValueKind);
    }

    [Theory]
    [InlineData("3,2mm x 20 x 30", "3,2")]
    [InlineData("1 x 2", "thickness x width x length")]
    [InlineData("1 x 0 x 30", "zero")]
    public async Task A_size_that_cannot_be_ends_with_2_and_says_how_to_mend_it(string size, string says)
    {
        var outcome = await offcuts.RunAsync("boards", "add", size, "--species", "white-ash");

        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains(says, outcome.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_others_wrote_cannot_steer_the_terminal()
    {
        var added = await offcuts.RunAsync("boards", "add", "1 x 2 x 30", "--species", "white-ash", "--place", "\u001b[2Jrack\u202e", "--note", "a\nb");

        var list = await offcuts.RunAsync("boards", "list");
        var show = await offcuts.RunAsync("boards", "show", added.Out.Trim());

        Assert.DoesNotContain('\u001b', list.Out + show.Out);
        Assert.DoesNotContain('\u202e', list.Out + show.Out);
        Assert.Contains("[2Jrack", list.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\nb", show.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_board_list_is_read_from_standard_input_all_or_none()
    {
        const string Bad = """{"items":[{"species":"white-ash","thicknessMm":25,"widthMm":100,"lengthMm":900},{"species":"white-ash","thicknessMm":0,"widthMm":100,"lengthMm":900}]}""";
        var file = Path.Combine(offcuts.Folder, "boards.json");
        await File.WriteAllTextAsync(file, Bad);

        var refused = await offcuts.RunAsync("boards", "import", file);
        var none = await offcuts.RunAsync("boards", "list", "--json");

        Assert.Equal(2, refused.Code);
        Assert.Contains("items.1.thicknessMm", refused.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("white-ash", none.Out, StringComparison.Ordinal);
    }
}
