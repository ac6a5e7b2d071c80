namespace Offcuts.Cli.Tests;

public sealed class FindTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_piece_is_found_in_any_order_of_words()
    {
        var id = (await offcuts.RunAsync("boards", "log", "1 x 6 x 60 ash, rack 2")).Out[..3];
        await offcuts.RunAsync("places", "set", "rack 2", "--reach", "behind");

        var found = await offcuts.RunAsync("find", "ash", "3/4", "x", "5", "x", "20");
        Assert.True(found.Code == 0, found.Err);
        Assert.Equal(
            $"ID            SIZE  QTY  SURFACE  GIVES    SPENDS  LEFT OVER      PLACE\n{id}  1 x 6 x 60 in    1  rough        2  4.62 USD  6 x 39 3/8 in  rack 2 (behind)\n",
            found.Out);
        Assert.Contains("Looking for white ash, 3/4 x 5 x 20 in finished.", found.Err, StringComparison.Ordinal);
        Assert.Contains("One entry gives 2 in all.", found.Err, StringComparison.Ordinal);

        // Too few is no success for a script.
        var few = await offcuts.RunAsync("find", "3/4 x 5 x 20 ash", "--qty", "3");
        Assert.Equal(3, few.Code);
        Assert.Contains("too few for 3", few.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_there_is_none_it_says_what_comes_nearest()
    {
        var id = (await offcuts.RunAsync("boards", "log", "1 x 6 x 36 walnut")).Out[..3];
        var none = await offcuts.RunAsync("find", "walnut", "3/4", "x", "5", "x", "36");
        Assert.Equal(3, none.Code);
        Assert.Contains($"{id}  1 x 6 x 36 in  rough    too short by 1/2\" (takes 36 1/2\", has 36\")", none.Out, StringComparison.Ordinal);
        var other = await offcuts.RunAsync("find", "cherry", "3/4", "x", "5", "x", "36");
        Assert.Equal((3, ""), (other.Code, other.Out));
        Assert.Contains("No free board is of that species", other.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_understood_is_pointed_at()
    {
        var wrong = await offcuts.RunAsync("find", "wallnut", "3/4 x 5 x 36");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("line 1, column 1: 'wallnut' is not understood. Did you mean walnut?\n  wallnut 3/4 x 5 x 36\n  ^\n", wrong.Err, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("find", "walnut 3/4 x 5 x 36", "--grain", "any")).Code);
        Assert.Equal(2, (await offcuts.RunAsync("find")).Code);
    }
}
