using System.CommandLine;
using Offcuts.Cli.Commands;

namespace Offcuts.Cli.Tests;

public sealed class CommandTreeTests
{
    public static TheoryData<string> Paths => [.. All(CommandLine.Tree(), "offcuts").Select(node => node.Path)];

    [Theory]
    [MemberData(nameof(Paths))]
    public void Every_command_has_a_description_examples_that_parse_and_described_options(string path)
    {
        var command = All(CommandLine.Tree(), "offcuts").Single(node => node.Path == path).Command;

        Assert.False(string.IsNullOrWhiteSpace(command.Description));
        Assert.All(command.Arguments, argument => Assert.False(string.IsNullOrWhiteSpace(argument.Description)));
        Assert.All(command.Options, option =>
        {
            Assert.False(string.IsNullOrWhiteSpace(option.Description));
            Assert.StartsWith("--", option.Name, StringComparison.Ordinal);
        });
        if (command is Verb verb)
        {
            Assert.NotEmpty(verb.Examples);
            Assert.All(verb.Examples, example =>
            {
                var words = example[example.IndexOf("offcuts ", StringComparison.Ordinal)..].Split(" > ")[0];
                var parsed = CommandLine.Tree().Parse(words["offcuts ".Length..]);
                Assert.Empty(parsed.Errors);
                Assert.NotNull(Assert.IsType<Verb>(parsed.CommandResult.Command).Work);
            });
        }
    }

    private static IEnumerable<(string Path, Command Command)> All(Command command, string path) =>
        command.Subcommands.SelectMany(below => All(below, $"{path} {below.Name}")).Prepend((path, command));
}
