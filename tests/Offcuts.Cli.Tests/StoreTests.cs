namespace Offcuts.Cli.Tests;

// Who only asks makes no store, whatever folder was named.
public sealed class StoreTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Theory]
    [InlineData("boards list", 0, "No boards match")]
    [InlineData("shop show", 0, "")]
    [InlineData("journal check", 0, "")]
    [InlineData("plan hall-bench", 1, "hall-bench")]
    [InlineData("boards edit K7M --note x", 1, "K7M")]
    [InlineData("stocktake start rack", 1, "knows no place")]
    public async Task Asking_makes_no_store_and_says_that_there_is_none(string line, int code, string says)
    {
        var folder = Path.Combine(offcuts.Folder, "typo");
        var outcome = await offcuts.RunAsync([.. line.Split(' '), "--data", folder]);
        Assert.True(outcome.Code == code, outcome.Err);
        Assert.Contains($"There is no store in {folder}, and asking makes none", outcome.Err, StringComparison.Ordinal);
        Assert.Contains("Begin one with 'offcuts boards log'", outcome.Err, StringComparison.Ordinal);
        Assert.Contains(says, outcome.Out + outcome.Err, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData("boards log 3/4 x 5 x 36 ash")]
    [InlineData("shop set --kerf 1/16")]
    [InlineData("places set rack --reach behind")]
    [InlineData("stocktake start rack --new")]
    public async Task What_has_something_to_store_makes_one(string line)
    {
        var folder = Path.Combine(offcuts.Folder, "shop");
        var outcome = await offcuts.RunAsync([.. line.Split(' '), "--data", folder]);
        Assert.True(outcome.Code == 0, outcome.Err);
        Assert.DoesNotContain("There is no store", outcome.Err, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "offcuts.db")));
        Assert.DoesNotContain("There is no store", (await offcuts.RunAsync("boards", "list", "--data", folder)).Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_setting_that_is_so_already_is_no_mistake()
    {
        await offcuts.RunAsync("shop", "set", "--kerf", "1/16");
        var same = await offcuts.RunAsync("shop", "set", "--kerf", "1/16");
        Assert.True(same.Code == 0, same.Err);
        Assert.Equal("It was so already: nothing has changed.\n", same.Err);
        Assert.Equal((await offcuts.RunAsync("shop", "show")).Out, same.Out);
        var none = await offcuts.RunAsync("shop", "set");
        Assert.Equal(2, none.Code);
        Assert.Contains("name a setting", none.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_defect_is_added_or_takes_the_place_of_all_which_is_said()
    {
        var id = (await offcuts.RunAsync("boards", "log", "4/4 x 5 x 40 ash, knot 10..12 x 1..2")).Out[..3];
        var added = await offcuts.RunAsync("boards", "edit", id, "--add-defect", "split 0..3in");
        Assert.True(added.Code == 0, added.Err);
        Assert.DoesNotContain("took the place", added.Err, StringComparison.Ordinal);
        Assert.Contains("knot,", added.Out, StringComparison.Ordinal);
        Assert.Contains("split,", added.Out, StringComparison.Ordinal);

        var stated = await offcuts.RunAsync("boards", "edit", id, "--defect", "stain 0..4");
        Assert.Contains($"--defect took the place of what was known of {id}: knot 10\" to 12\" along, 1\" to 2\" across; split 0\" to 3\" along, 0\" to 5\" across.", stated.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("knot,", stated.Out, StringComparison.Ordinal);
        var both = await offcuts.RunAsync("boards", "edit", id, "--defect", "none", "--add-defect", "wane 0..2");
        Assert.Contains("wane,", both.Out, StringComparison.Ordinal);
        Assert.Contains("--add-defect:", (await offcuts.RunAsync("boards", "edit", id, "--add-defect", "knot")).Err, StringComparison.Ordinal);
    }
}
