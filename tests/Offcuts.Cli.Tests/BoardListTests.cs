namespace Offcuts.Cli.Tests;

public sealed class BoardListTests : IDisposable
{
    private const string Rack = """
        species,quantity,thickness,width,length,unit,place,logged
        ash,2,1,8,96,in,rack 2,2020-05-01
        cherry,1,1,8,30,in,,
        ash,1,0.75,6,12,in,bin,
        """;

    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Boards_are_listed_by_length_and_age_and_added_up()
    {
        var file = Path.Combine(offcuts.Folder, "rack.csv");
        await File.WriteAllTextAsync(file, Rack);
        Assert.Equal(0, (await offcuts.RunAsync("boards", "import", file)).Code);
        var middle = await offcuts.RunAsync("boards", "list", "--from", "2ft", "--to", "36");
        Assert.Contains("1 x 8 x 30 in", Assert.Single(Rows(middle.Out)), StringComparison.Ordinal);
        var sorted = Rows((await offcuts.RunAsync("boards", "list", "--sort", "length", "--reverse")).Out).ToList();
        Assert.Equal(["x 96 in", "x 30 in", "x 12 in"], sorted.Select(row => row[(row.IndexOf(" in ", StringComparison.Ordinal) - 4)..(row.IndexOf(" in ", StringComparison.Ordinal) + 3)]));
        var old = await offcuts.RunAsync("boards", "list", "--older-than", "2y");
        Assert.Contains("2020-05-01  rack 2", Assert.Single(Rows(old.Out)), StringComparison.Ordinal);
        Assert.Equal(old.Out, (await offcuts.RunAsync("boards", "list", "--logged-before", "2020-05-02")).Out);

        // 16/3 board feet each, worth 6.00 each, and half a board foot of the short end, which is worth less.
        var totals = await offcuts.RunAsync("boards", "totals");
        Assert.Equal(
            "SPECIES       BOARDS      VOLUME      WORTH\n"
            + "black cherry       1   1.7 bd ft   5.18 USD\n"
            + "white ash          3  11.0 bd ft  51.96 USD\n"
            + "all                4  12.7 bd ft  57.14 USD\n",
            totals.Out);
        Assert.Contains("96\" and more", (await offcuts.RunAsync("boards", "totals", "--by", "length")).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("is no age", "boards", "list", "--older-than", "old")]
    [InlineData("is no day", "boards", "totals", "--logged-before", "may")]
    [InlineData("--reverse needs --sort", "boards", "list", "--reverse")]
    [InlineData("give species, thickness", "boards", "list", "--sort", "price")]
    [InlineData("give species, thickness", "boards", "totals", "--by", "price")]
    public async Task What_cannot_be_asked_is_refused(string said, params string[] words)
    {
        var refused = await offcuts.RunAsync(words);
        Assert.Equal(2, refused.Code);
        Assert.Contains(said, refused.Err, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Rows(string table) => table.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1);
}
