namespace Offcuts.Cli.Tests;

public sealed class TerminalTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [TerminalTheory]
    [InlineData(null, null, "", true)]
    [InlineData("NO_COLOR", "", "", true)]
    [InlineData("NO_COLOR", "1", "", false)]
    [InlineData("TERM", "dumb", "", false)]
    [InlineData(null, null, " --no-color", false)]
    public async Task Escapes_go_to_a_terminal_unless_they_are_unwanted(string? name, string? value, string option, bool coloured)
    {
        using var process = offcuts.Start(
            Needing.Script, ["-qec", $"\"$OFFCUTS_PROGRAM\" boards --help{option}", "/dev/null"],
            name is null ? null : new() { [name] = value });
        process.StandardInput.Close();
        var outcome = await Program.FinishAsync(process);

        Assert.Contains("Usage", outcome.Out, StringComparison.Ordinal);
        Assert.Equal(coloured, outcome.Out.Contains('\u001b', StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nothing_that_is_piped_has_an_escape()
    {
        var help = await offcuts.RunAsync("boards", "--help");
        var fault = await offcuts.RunAsync("bords");

        Assert.DoesNotContain('\u001b', help.Out + fault.Err);
    }

    [UnixFact]
    public async Task A_reader_that_leaves_early_is_no_fault()
    {
        await offcuts.RunAsync("shop", "set", "--kerf", "1/16");
        using var process = offcuts.Start("/bin/sh", ["-c", "\"$OFFCUTS_PROGRAM\" species list; echo $? >&2"]);
        process.StandardInput.Close();
        process.StandardOutput.Close();
        var error = await process.StandardError.ReadToEndAsync();

        Assert.Equal("0\n", error);
    }
}
