using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace Offcuts.Cli.Commands;

/// <summary>Values of options and arguments that are no texts, with faults in the user's words instead of the parser's.</summary>
internal static class Values
{
    /// <summary>A whole number.</summary>
    public static int? Whole(ArgumentResult given)
    {
        var word = WordOf(given);
        if (int.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value))
        {
            return value;
        }

        given.AddError($"{NameOf(given)} '{word}': give a whole number, for instance 2.");
        return null;
    }

    /// <summary>A decimal number.</summary>
    public static decimal? Number(ArgumentResult given)
    {
        var word = WordOf(given);
        if (decimal.TryParse(word, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return value;
        }

        given.AddError($"{NameOf(given)} '{word}': give a number, for instance 0.68.");
        return null;
    }

    /// <summary>True or false; null if the option is not given. The parser would take a wrong word for an argument that the command has not.</summary>
    /// <exception cref="CliException">It is another word.</exception>
    public static bool? Truth(Run run, Option<string> option) => run.Get(option) is not { } word ? null
        : bool.TryParse(word, out var value) ? value
        : throw CliException.Usage($"{option.Name} '{word}' is not known: give true or false.");

    private static string WordOf(ArgumentResult given) => string.Join(' ', given.Tokens.Select(token => token.Value));

    private static string NameOf(ArgumentResult given) => given.Parent is OptionResult option ? option.Option.Name : given.Argument.Name;
}
