namespace Offcuts.Cli.Tests;

public sealed class TopicTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Theory]
    [InlineData("design-files", "designs add -", "blanket-box\n")]
    [InlineData("price-list-files", "prices load -", "corner-yard\n")]
    [InlineData("keep-rule-files", "keep-rule set -", "Keep hardwood")]
    [InlineData("board-list-files", "boards import -", "behind the door")]
    public async Task Help_on_a_file_format_is_a_file_of_it(string topic, string reads, string gives)
    {
        var help = await offcuts.RunAsync("help", topic);

        var read = await offcuts.RunAsync(reads.Split(' '), help.Out, null);

        Assert.True(read.Code == 0, read.Err);
        Assert.Contains(gives, read.Out, StringComparison.Ordinal);
    }
}
