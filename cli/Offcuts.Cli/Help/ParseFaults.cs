using System.CommandLine;
using System.CommandLine.Parsing;
using Offcuts.Domain;

namespace Offcuts.Cli.Help;

/// <summary>Says what is wrong with a command line and what was probably meant; the guess is never run.</summary>
internal static class ParseFaults
{
    /// <summary>One line; null if nothing is wrong.</summary>
    /// <param name="parsed">The command line as parsed.</param>
    /// <param name="args">The command line as given.</param>
    public static string? Explain(ParseResult parsed, IEnumerable<string> args)
    {
        var command = parsed.CommandResult.Command;
        var path = HelpText.PathOf(command);
        return What(parsed, [.. args.TakeWhile(arg => arg != "--")], path) is { } what ? $"{what} See '{path} --help'." : null;
    }

    private static string? What(ParseResult parsed, HashSet<string> options, string path)
    {
        var command = parsed.CommandResult.Command;
        var words = parsed.CommandResult.Children.OfType<ArgumentResult>()
            .SelectMany(result => result.Tokens.Select(token => (result.Argument, token.Value))).ToList();
        // An argument of many words takes a mistyped option for one of them.
        if (words.Select(word => word.Value).FirstOrDefault(word => IsOption(word) && options.Contains(word)) is { } option)
        {
            return $"'{path}' has no option '{option}'.{Suggestion(command, option)}";
        }

        if (parsed.UnmatchedTokens is [var strange, ..])
        {
            return $"'{path}' does not know '{strange}'.{Suggestion(command, strange)}";
        }

        if (parsed.Errors.Count > 0)
        {
            return string.Join(" ", parsed.Errors.Select(error => error.Message.ReplaceLineEndings(" ")));
        }

        return words.FirstOrDefault(word => string.IsNullOrWhiteSpace(word.Value)).Argument is { } empty
            ? $"{empty.Name} is empty: give {char.ToLowerInvariant(empty.Description![0])}{empty.Description[1..]}."
            : null;
    }

    // A length may begin with a minus sign.
    private static bool IsOption(string word) => word.Length > 1 && word[0] == '-' && (word[1] == '-' || char.IsAsciiLetter(word[1]));

    private static string Suggestion(Command command, string strange)
    {
        var names = HelpText.OptionsOf(command).Select(option => option.Name)
            .Concat(command.Subcommands.Where(verb => !verb.Hidden).Select(verb => verb.Name));
        return Spelling.Nearest(strange, names) is { } best ? $" Did you mean '{best}'?" : "";
    }
}
