using Offcuts.Pictures.Labels;

namespace Offcuts.Cli.Tests;

public sealed class TableFileTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_table_goes_out_is_changed_and_comes_back()
    {
        await offcuts.RunAsync(["boards", "log", "-q"], "3 @ 3/4 x 5 1/2 x ~36 ash, rack 2\n4/4 x 7 x 62 walnut\n", null);
        var file = Path.Combine(offcuts.Folder, "rack.csv");
        var written = await offcuts.RunAsync("boards", "export", "-o", file);
        Assert.True(written.Code == 0, written.Err);
        Assert.Equal([0xEF, 0xBB, 0xBF], (await File.ReadAllBytesAsync(file))[..3]);
        Assert.Equal((await File.ReadAllTextAsync(file)).TrimStart('\uFEFF'), (await offcuts.RunAsync("boards", "export")).Out);

        var same = await offcuts.RunAsync("boards", "import", file);
        Assert.Equal((0, "2 boards are as the table has them.\n"), (same.Code, same.Err));

        await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file)).Replace("~36", "35.75", StringComparison.Ordinal) + ",cherry,1,1,6,40,in\r\n");
        var changed = await offcuts.RunAsync("boards", "import", file);
        Assert.Equal("Logged 1 board. Write the ids on their end grain. Changed 1 board. 1 board is as the table has it.\n", changed.Err);
        Assert.Contains("3/4 x 5 1/2 x 35 3/4 in", changed.Out, StringComparison.Ordinal);

        var again = await offcuts.RunAsync("boards", "import", file);
        Assert.Contains("were imported before", again.Err, StringComparison.Ordinal);
        Assert.Equal(3, (await offcuts.RunAsync("boards", "list")).Out.Split('\n').Length - 2);
    }

    [Fact]
    public async Task A_bad_table_is_told_with_its_file_and_line_and_changes_nothing()
    {
        var wrong = await offcuts.RunAsync(["boards", "import", "-", "--csv"], "species,thickness,width,length\nash,1,6,40\nash,1,six,40\n", null);
        Assert.Equal(2, wrong.Code);
        Assert.Contains("line 3, width: 'six' is not a length", wrong.Err, StringComparison.Ordinal);
        Assert.Contains("No boards", (await offcuts.RunAsync("boards", "list")).Err, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("boards", "import", "rack.yaml", "--again")).Code);
    }

    [Fact]
    public async Task Labels_are_written_for_the_boards_that_are_named()
    {
        var id = (await offcuts.RunAsync("boards", "log", "2 @ 3/4 x 5 1/2 x 36 ash")).Out[..3];
        await offcuts.RunAsync("boards", "log", "4/4 x 7 x 62 walnut");
        var file = Path.Combine(offcuts.Folder, "labels.svg");

        var written = await offcuts.RunAsync("boards", "labels", id, "--stock", "a4-3x7", "--sheet", "1", "-o", file);

        Assert.True(written.Code == 0, written.Err);
        var svg = await File.ReadAllTextAsync(file);
        Assert.Contains("white ash", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("walnut", svg, StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", (await offcuts.RunAsync("boards", "labels")).Out, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("boards", "labels", "--stock", "letter-9x9")).Code);
        var help = (await offcuts.RunAsync("boards", "labels", "--help")).Out;
        Assert.All(LabelStock.All, stock => Assert.Contains(stock.Name, help, StringComparison.Ordinal));
    }
}
