namespace Offcuts.Cli.Tests;

public sealed class CompletionTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [BashTheory]
    [InlineData("offcuts boa", "boards")]
    [InlineData("offcuts boards a", "add")]
    [InlineData("offcuts boards add --surface su", "surfaced")]
    [InlineData("offcuts boards list --min-l", "--min-length")]
    [InlineData("offcuts completion ba", "bash")]
    public async Task Bash_completes_and_opens_no_store(string line, string expected)
    {
        const string Ask = """
            PATH="$(dirname "$OFFCUTS_PROGRAM"):$PATH"
            source <(offcuts completion bash)
            COMP_LINE=$1; COMP_POINT=${#1}; COMP_WORDS=($1); COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            _offcuts
            printf '%s\n' "${COMPREPLY[@]}"
            """;
        using var process = offcuts.Start(BashTheoryAttribute.Bash, ["--norc", "-c", Ask, "test", line]);
        process.StandardInput.Close();

        var outcome = await Program.FinishAsync(process);

        Assert.Equal($"{expected}\n", outcome.Out);
        Assert.False(File.Exists(offcuts.Store));
    }

    [Fact]
    public async Task An_unknown_shell_is_a_usage_fault() =>
        Assert.Equal(2, (await offcuts.RunAsync("completion", "tcsh")).Code);
}
