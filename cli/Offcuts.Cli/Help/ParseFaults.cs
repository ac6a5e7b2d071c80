using System.CommandLine;

namespace Offcuts.Cli.Help;

/// <summary>Says what is wrong with a command line and what was probably meant; the guess is never run.</summary>
internal static class ParseFaults
{
    private const int FarthestTypo = 2;

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
        var best = HelpText.OptionsOf(command).Select(option => option.Name)
            .Concat(command.Subcommands.Where(verb => !verb.Hidden).Select(verb => verb.Name))
            .Select(name => (Name: name, Distance: Distance(name, strange)))
            .Where(guess => guess.Distance <= FarthestTypo && guess.Distance < strange.Length)
            .OrderBy(guess => guess.Distance)
            .Select(guess => guess.Name)
            .FirstOrDefault();
        return best is null ? "" : $" Did you mean '{best}'?";
    }

    // Edit distance with exchanged neighbours counted as one (optimal string alignment).
    private static int Distance(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                cost[i, j] = i == 0 || j == 0
                    ? i + j
                    : Math.Min(Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1, cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[a.Length, b.Length];
    }
}
