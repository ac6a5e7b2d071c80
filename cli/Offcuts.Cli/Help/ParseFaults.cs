using System.CommandLine;
using Offcuts.Domain;

namespace Offcuts.Cli.Help;

/// <summary>Says what is wrong with a command line and what was probably meant; the guess is never run.</summary>
internal static class ParseFaults
{
    /// <summary>One line.</summary>
    public static string Explain(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var path = HelpText.PathOf(command);
        var strange = parsed.UnmatchedTokens.Count > 0 ? parsed.UnmatchedTokens[0] : null;
        var what = strange is not null
            ? $"'{path}' does not know '{strange}'.{Suggestion(command, strange)}"
            : string.Join(" ", parsed.Errors.Select(error => error.Message.ReplaceLineEndings(" ")));
        return $"{what} See '{path} --help'.";
    }

    private static string Suggestion(Command command, string strange)
    {
        var names = HelpText.OptionsOf(command).Select(option => option.Name)
            .Concat(command.Subcommands.Where(verb => !verb.Hidden).Select(verb => verb.Name));
        return Spelling.Nearest(strange, names) is { } best ? $" Did you mean '{best}'?" : "";
    }
}
