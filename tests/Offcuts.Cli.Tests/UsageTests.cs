using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class UsageTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Theory]
    [InlineData("bords", "Did you mean 'boards'?")]
    [InlineData("boards lst", "Did you mean 'list'?")]
    [InlineData("boards list --spceies ash", "Did you mean '--species'?")]
    [InlineData("boards show", "ID")]
    [InlineData("boards add 1 x 2 x 3", "--species")]
    [InlineData("frobnicate", "does not know 'frobnicate'")]
    [InlineData("boards show ", "ID is empty: give the board's id")]
    [InlineData("boards list --data ", "--data names no folder")]
    [InlineData("boards add 1 x 5 x 36 --species cherry --quantity 1.5", "--quantity '1.5': give a whole number")]
    [InlineData("boards add 1 x 5 x 36 --species cherry --placce x", "no option '--placce'. Did you mean '--place'?")]
    [InlineData("plans diagram 3k7m9aaa x", "NUMBER 'x': give a whole number")]
    [InlineData("plan bench --seed 99999999999", "give a whole number")]
    [InlineData("species add koa --specific-gravity 0,6 --name Koa", "give a number")]
    [InlineData("shop set --recut maybe", "give true or false")]
    public async Task A_wrong_command_line_ends_with_2_and_says_so_on_standard_error_only(string line, string says)
    {
        var outcome = await offcuts.RunAsync(line.Split(' '));

        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains(says, outcome.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", outcome.Err, StringComparison.Ordinal);
        Assert.Single(outcome.Err.TrimEnd('\n').Split('\n'));
        Assert.False(File.Exists(offcuts.Store));
    }

    [Fact]
    public async Task With_json_a_fault_is_a_JSON_object_on_standard_error()
    {
        var outcome = await offcuts.RunAsync("boards", "lst", "--json");

        using var fault = JsonDocument.Parse(outcome.Err);
        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Equal(["type", "code", "message", "exitCode"], fault.RootElement.EnumerateObject().Select(member => member.Name));
        Assert.Equal(2, fault.RootElement.GetProperty("exitCode").GetInt32());
    }

    [Fact]
    public async Task A_bare_noun_shows_its_help_on_standard_error()
    {
        var outcome = await offcuts.RunAsync("boards");

        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains("Examples", outcome.Err, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("boards add -h")]
    [InlineData("--version")]
    public async Task Help_and_version_are_data_and_open_no_store(string line)
    {
        var outcome = await offcuts.RunAsync(line.Split(' '));

        Assert.Equal(0, outcome.Code);
        Assert.NotEmpty(outcome.Out);
        Assert.Empty(outcome.Err);
        Assert.False(File.Exists(offcuts.Store));
    }
}
