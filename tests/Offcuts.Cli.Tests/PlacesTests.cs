namespace Offcuts.Cli.Tests;

public sealed class PlacesTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Places_are_set_listed_shown_and_removed()
    {
        await offcuts.RunAsync("boards", "add", "1 x 12 x 24", "--species", "white-ash", "--place", "rack 2", "--quantity", "3");
        // 1 x 12 x 12 in is a board foot.
        var set = await offcuts.RunAsync("places", "set", "rack 2", "--reach", "behind", "--limit", "40 bd ft");
        Assert.True(set.Code == 0, set.Err);
        Assert.Equal("Place:  rack 2\nReach:  behind\nBoards: 3\nHolds:  6.0 bd ft\nLimit:  40.0 bd ft\n", set.Out);
        Assert.Empty(set.Err);

        var strange = await offcuts.RunAsync("places", "set", "Rack 2", "--reach", "buried");
        Assert.Contains("No board lies at 'Rack 2'", strange.Err, StringComparison.Ordinal);
        Assert.Equal(0, (await offcuts.RunAsync("places", "remove", "Rack 2")).Code);
        Assert.Equal(1, (await offcuts.RunAsync("places", "remove", "Rack 2")).Code);

        // What is not named stays as it is.
        await offcuts.RunAsync("places", "set", "rack 2", "--note", "by the door");
        await offcuts.RunAsync("boards", "add", "1 x 12 x 24", "--species", "white-ash", "--place", "bin");
        Assert.Equal(
            "PLACE   REACH   BOARDS      HOLDS       LIMIT  NOTE\nbin     easy         1  2.0 bd ft\nrack 2  behind       3  6.0 bd ft  40.0 bd ft  by the door\n",
            (await offcuts.RunAsync("places", "list")).Out);
        Assert.DoesNotContain("Limit", (await offcuts.RunAsync("places", "set", "rack 2", "--limit", "none")).Out, StringComparison.Ordinal);
        Assert.Contains("by the door", (await offcuts.RunAsync("places", "show", "rack 2", "--json")).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("give --reach", "places", "set", "bin")]
    [InlineData("--limit: 'much'", "places", "set", "bin", "--limit", "much")]
    [InlineData("easy, behind, buried", "places", "set", "bin", "--reach", "far")]
    public async Task What_cannot_be_is_refused(string said, params string[] words)
    {
        var refused = await offcuts.RunAsync(words);
        Assert.Equal(2, refused.Code);
        Assert.Contains(said, refused.Err, StringComparison.Ordinal);
        Assert.Equal(1, refused.Err.Count(sign => sign == '\n'));
    }

    [Fact]
    public async Task A_plan_says_what_is_hard_to_get_at()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 48", "--species", "white-ash", "--surface", "surfaced", "--place", "loft");
        await offcuts.RunAsync("places", "set", "loft", "--reach", "buried");
        const string Shelf = "name: Shelf\nunit: in\nparts:\n  - {name: Board, size: 3/4 x 4 x 20, species: white-ash}\n";
        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s"], Shelf, null);
        Assert.Contains(", loft (buried): white ash", plan.Out, StringComparison.Ordinal);
    }
}
