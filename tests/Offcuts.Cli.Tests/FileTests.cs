namespace Offcuts.Cli.Tests;

public sealed class FileTests : IDisposable
{
    private const string Shelf = "{name: Shelf, unit: in, parts: [{name: Board, size: 3/4 x 4 x 20, species: white-ash}]}";
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Theory]
    [InlineData("boards list --data taken", 1, "is a file, but a store is a folder")]
    [InlineData("serve --urls http://127.0.0.1:0 --data taken", 1, "is a file, but a store is a folder")]
    [InlineData("boards import .", 2, "'.' is a folder. Give the path of a file in it")]
    [InlineData("boards import none.yaml", 2, "There is no file 'none.yaml'")]
    [InlineData("designs add bad.yaml", 2, "bad.yaml: line 3, sise: The key 'sise' is not known.")]
    public async Task A_file_that_cannot_be_used_is_named_with_what_is_wrong(string line, int code, string says)
    {
        await File.WriteAllTextAsync(Path.Combine(offcuts.Folder, "taken"), "");
        await File.WriteAllTextAsync(Path.Combine(offcuts.Folder, "bad.yaml"), "name: x\nparts:\n  - {name: a, sise: 1 x 2 x 3, size: 1 x 2 x 3, species: white-ash}\n");

        var outcome = await offcuts.RunAsync(line.Split(' '));

        Assert.Equal(code, outcome.Code);
        Assert.Contains(says, outcome.Err, StringComparison.Ordinal);
        Assert.Single(outcome.Err.TrimEnd('\n').Split('\n'));
    }

    [Theory]
    [InlineData(".", "it is a folder")]
    [InlineData("none/a.html", "there is no folder")]
    public async Task A_plan_whose_sheet_cannot_be_written_is_kept_and_the_user_told_so(string path, string says)
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 48", "--species", "white-ash", "--surface", "surfaced");

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--sheet", path], Shelf, null);

        Assert.Equal(1, plan.Code);
        Assert.Contains($"'{path}' cannot be written: {says}", plan.Err, StringComparison.Ordinal);
        Assert.Contains("The plan itself is stored", plan.Err, StringComparison.Ordinal);
        var again = await offcuts.RunAsync("plans", "sheet", "last", "-o", "a.html");
        Assert.True(again.Code == 0, again.Err);
        var wrong = await offcuts.RunAsync("plans", "diagram", "last", "1", "-o", "none/x.svg");
        Assert.Equal(1, wrong.Code);
        Assert.Contains("'none/x.svg' cannot be written: there is no folder", wrong.Err, StringComparison.Ordinal);
    }
}
