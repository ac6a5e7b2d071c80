namespace Offcuts.Cli.Tests;

public sealed class CullTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task What_may_go_is_listed_with_its_reasons_and_the_maker_decides()
    {
        Assert.Contains("Nothing to let go", (await offcuts.RunAsync("cull")).Err, StringComparison.Ordinal);
        await offcuts.RunAsync("boards", "log", "3/4 x 2 x 10 walnut, offcut bin");
        await offcuts.RunAsync("boards", "log", "3/4 x 4 x 40 ash");

        var cull = await offcuts.RunAsync("cull");
        Assert.True(cull.Code == 0, cull.Err);
        Assert.Matches(@"^\w+ +black walnut, 3/4 x 2 x 10 in, offcut bin: 0\.1 bd ft, worth 0\.00 USD\n +- the shop keeps only what is at least 12"" long, 2"" wide and 1/4"" thick; it is 10"" long\n$", cull.Out);
        Assert.Contains("Nothing was changed", cull.Err, StringComparison.Ordinal);
        Assert.Contains("There are no saved designs", cull.Err, StringComparison.Ordinal);

        var id = cull.Out[..cull.Out.IndexOf(' ', StringComparison.Ordinal)];
        await offcuts.RunAsync("boards", "edit", id, "--status", "gone");
        Assert.Empty((await offcuts.RunAsync("cull")).Out);
        Assert.Contains("\"suggested\": 0", (await offcuts.RunAsync("cull", "--json", "--free", "20 bd ft", "--top", "3", "--older-than", "18 months")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task How_long_is_long_is_said_as_elsewhere()
    {
        var logged = DateTime.UtcNow.AddMonths(-20).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        var file = Path.Combine(offcuts.Folder, "rack.csv");
        await File.WriteAllTextAsync(file, $"species,thickness,width,length,unit,logged\nash,1,5,60,in,{logged}\n");
        Assert.Equal(0, (await offcuts.RunAsync("boards", "import", file)).Code);
        Assert.Contains("\"suggested\": 1", (await offcuts.RunAsync("cull", "--json", "--older-than", "18 months")).Out, StringComparison.Ordinal);
        Assert.Contains("\"suggested\": 0", (await offcuts.RunAsync("cull", "--json", "--older-than", "22 months")).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--free", "much")]
    [InlineData("--older-than", "long")]
    [InlineData("--top", "0")]
    public async Task A_wrong_option_is_told_in_one_line(string option, string value)
    {
        var outcome = await offcuts.RunAsync("cull", option, value);
        Assert.Equal(2, outcome.Code);
        Assert.Single(outcome.Err.TrimEnd().Split('\n'));
    }
}
