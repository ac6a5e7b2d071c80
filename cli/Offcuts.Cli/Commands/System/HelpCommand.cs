using System.CommandLine;
using Offcuts.Cli.Help;

namespace Offcuts.Cli.Commands;

/// <summary><c>offcuts help</c>.</summary>
internal static class HelpCommand
{
    private static readonly Argument<string[]> Words = new("TOPIC")
    {
        Description = $"{string.Join(", ", Topics.Names)}, or a command",
        Arity = ArgumentArity.ZeroOrMore,
    };

    public static Verb Create()
    {
        Words.CompletionSources.Add([.. Topics.Names]);
        return new Verb(
            "help", "Show help on a topic (lengths, design-files, exit-codes and others) or a command", "offcuts help lengths", "offcuts help design-files", "offcuts help exit-codes", "offcuts help boards add")
            .With(Words).Does(HelpAsync);
    }

    private static Task<int> HelpAsync(Run run)
    {
        var words = run.Get(Words);
        if (words is [var topic] && Topics.Find(topic) is { } text)
        {
            run.Terminal.Out.WriteLine(text);
            return Task.FromResult(ExitCode.Ok);
        }

        Command command = run.Root;
        foreach (var word in words)
        {
            command = command.Subcommands.FirstOrDefault(verb => verb.Name == word)
                ?? throw CliException.Usage($"There is no help on '{string.Join(' ', words)}'. Topics: {string.Join(", ", Topics.Names)}; or name a command.");
        }

        HelpText.Write(command, run.Terminal, run.Terminal.Out);
        return Task.FromResult(ExitCode.Ok);
    }
}
