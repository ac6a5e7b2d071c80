namespace Offcuts.Cli.Tests;

public sealed class BoardKindTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Plywood_is_logged_as_a_sheet_and_wood_never_is()
    {
        var ply = await offcuts.RunAsync("boards", "add", "1/4 x 24 x 48", "--species", "birch ply");
        Assert.Contains("birch plywood, sheet, 1/4 x 24 x 48 in", ply.Err, StringComparison.Ordinal);

        var solid = await offcuts.RunAsync("boards", "add", "1/4 x 24 x 48", "--species", "birch ply", "--kind", "solid");
        var sheet = await offcuts.RunAsync("boards", "add", "1/4 x 24 x 48", "--species", "white ash", "--kind", "sheet");
        Assert.Equal((2, 2), (solid.Code, sheet.Code));
        Assert.Contains("leave the kind out or give sheet", solid.Err, StringComparison.Ordinal);
        Assert.Contains("leave the kind out or give solid", sheet.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_board_that_becomes_a_sheet_is_no_longer_rough()
    {
        // A species of the shop's own whose classes do not tell may be either.
        await offcuts.RunAsync("species", "add", "cane-board", "--name", "cane board");
        var id = (await offcuts.RunAsync("boards", "add", "3/4 x 24 x 48", "--species", "cane-board")).Out.Trim();
        Assert.Contains("solid, rough", (await offcuts.RunAsync("boards", "show", id)).Out, StringComparison.Ordinal);

        var edited = await offcuts.RunAsync("boards", "edit", id, "--kind", "sheet");
        var back = await offcuts.RunAsync("boards", "edit", id, "--species", "white ash");

        Assert.Contains("Kind:       sheet\n", edited.Out, StringComparison.Ordinal);
        Assert.Contains("Kind:       solid, rough\n", back.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1x6 x 36")]
    [InlineData("1x6x36")]
    public async Task A_nominal_size_of_softwood_is_told_and_dressed(string size)
    {
        var pine = await offcuts.RunAsync("boards", "add", size, "--species", "eastern white pine");
        var rough = await offcuts.RunAsync("boards", "add", size, "--species", "eastern white pine", "--surface", "rough");
        var ash = await offcuts.RunAsync("boards", "add", size, "--species", "white ash");
        var edited = await offcuts.RunAsync("boards", "edit", ash.Out.Trim(), "--size", size, "--species", "eastern white pine");

        Assert.Contains("surfaced, 3/4 x 5 1/2 x 36 in (read as nominal 1x6: 3/4 x 5 1/2)", pine.Err, StringComparison.Ordinal);
        Assert.Contains("rough, 3/4 x 5 1/2 x 36 in (read as nominal 1x6", rough.Err, StringComparison.Ordinal);
        Assert.Contains("white ash, rough, 1 x 6 x 36 in. ", ash.Err, StringComparison.Ordinal);
        Assert.Contains("solid, surfaced", edited.Out, StringComparison.Ordinal);
        Assert.Contains("read as nominal 1x6", edited.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_size_in_the_wrong_order_is_refused_with_the_right_one()
    {
        var swapped = await offcuts.RunAsync("boards", "add", "36 x 5 1/2 x 3/4", "--species", "white ash");
        Assert.Equal(2, swapped.Code);
        Assert.Contains("did you mean 3/4 x 5 1/2 x 36 in?", swapped.Err, StringComparison.Ordinal);
    }
}
