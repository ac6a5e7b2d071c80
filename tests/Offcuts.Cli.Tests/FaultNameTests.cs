namespace Offcuts.Cli.Tests;

// What is wrong is called by the option or by the key of the file, not by its name on the wire.
public sealed class FaultNameTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task Options_are_named_as_they_were_written()
    {
        await DesignAsync("Peg rail", "gift");
        await DesignAsync("Shelf", "gift");
        await offcuts.RunAsync("boards", "log", "4/4 x 5 x 40 ash, rack 2, batch log 3");

        await SaysAsync("--most: ", "fill", "peg-rail", "shelf", "--most", "shelf=99999");
        await SaysAsync("--tag: No design has the tag 'gfit'. Did you mean 'gift'?", "fill", "--tag", "gfit");
        await SaysAsync("--tag: No design has the tag 'gfit'. Did you mean 'gift'?", "fit", "--tag", "gfit");
        await SaysAsync("--place: Nothing lies at 'rak 2'. Did you mean 'rack 2'?", "fit", "--place", "rak 2");
        await SaysAsync("--place: Nothing lies at 'attic'. There is rack 2.", "fit", "--place", "attic");
        await SaysAsync("--batch: No board is of the batch 'lot 9'. There is log 3.", "fit", "--batch", "lot 9");
        await SaysAsync("--species: ", "fit", "--species", "wallnut");
        await SaysAsync("--older-than: ", "cull", "--older-than", "0 days");
        await SaysAsync("PARAMETER: ", "stretch", "shelf", "length");
        await SaysAsync("--with: ", "plan", "shelf", "--with", "length=30in");
        Assert.Equal(0, (await offcuts.RunAsync("cull", "--older-than", "100 years")).Code);

        // A place of which all is gone is known: there the answer is that nothing fits.
        var id = (await offcuts.RunAsync("boards", "log", "4/4 x 5 x 40 ash, bin")).Out[..3];
        await offcuts.RunAsync("boards", "edit", id, "--status", "gone");
        Assert.Equal(0, (await offcuts.RunAsync("fit", "--place", "bin")).Code);
    }

    [Fact]
    public async Task A_key_of_a_file_is_named_with_its_line_as_it_is_written()
    {
        var outcome = await offcuts.RunAsync(
            ["designs", "add", "-"], "name: x\nunit: in\ngroups:\n  - name: g\n    one specis: yes\nparts:\n  - {name: a, size: 1 x 2 x 3, species: white-ash, group: g}\n", null);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("error: line 5, one specis: The key 'one specis' is not known. Did you mean 'one species'?", outcome.Err, StringComparison.Ordinal);
    }

    private async Task SaysAsync(string says, params string[] args)
    {
        var outcome = await offcuts.RunAsync(args);
        Assert.True(outcome.Code == 2, outcome.Err + outcome.Out);
        Assert.Contains($"error: {says}", outcome.Err, StringComparison.Ordinal);
    }

    private async Task DesignAsync(string name, string tag) => Assert.Equal(
        0, (await offcuts.RunAsync(["designs", "add", "-"], $"name: {name}\nunit: in\ntags: [{tag}]\nparts:\n  - {{name: a, size: 3/4 x 2 x 20, species: white-ash}}\n", null)).Code);
}
