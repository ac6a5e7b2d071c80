using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Cli.Help;

namespace Offcuts.Cli;

/// <summary>What the place of a fault on the wire is called by who sees it: the option, the key of the file, the setting.</summary>
internal static partial class FaultNames
{
    // What an option is called otherwise on the wire.
    private static readonly Dictionary<string, string> Options = new(StringComparer.Ordinal)
    {
        ["maxCost"] = "spend",
        ["maxHours"] = "hours",
        ["tags"] = "tag",
        ["budgetMs"] = "budget",
        ["freeM3"] = "free",
        ["olderThanDays"] = "older-than",
        ["loggedBefore"] = "older-than",
        ["minLengthMm"] = "from",
        ["maxLengthMm"] = "to",
        ["wish"] = "nearest",
        ["leftovers"] = "leftover",
        ["added"] = "add",
        ["position"] = "place",
        ["defects"] = "defect",
    };

    // Said as a whole on the command line: what is wrong tells where in it.
    private static readonly HashSet<string> Whole = ["text", "line", "boards"];

    /// <summary>The key of a file: by itself where its line is told, with its path where it is not.</summary>
    public static string InDocument(string pointer, int? line)
    {
        var names = Read(pointer);
        return line is null ? string.Join('.', names) : names.FindLast(name => !IsNumber(name)) ?? "";
    }

    /// <summary>The option that sets a setting of the shop.</summary>
    public static string OfSetting(string pointer)
    {
        var names = Read(pointer);
        return names.Count == 0 ? ""
            : names[0] == "keep" ? "--keep"
            : names[0] == "climate" ? (names[^1] == "temperatureCelsius" ? "--temperature" : "--humidity")
            : $"--{string.Join('-', names.Select(name => Words(IsSize(name) ? name[..^2] : name, "-")))}";
    }

    /// <summary>The option or argument of a command, else the place in words: <c>thickness</c>.</summary>
    public static string OnCommandLine(string pointer, Command command)
    {
        var names = Read(pointer);
        if (Enumerable.Reverse(names).Select(name => OptionOf(name, command)).OfType<string>().FirstOrDefault() is { } option)
        {
            return option;
        }

        if (names.TrueForAll(name => Whole.Contains(name) || IsNumber(name)))
        {
            return "";
        }

        // Sizes are called on the wire by their unit: whoever wrote one said "planer width".
        return command.Arguments.FirstOrDefault(argument => argument.Name.Equals(names[^1], StringComparison.OrdinalIgnoreCase))?.Name
            ?? string.Join(", ", Counted(names));
    }

    private static string? OptionOf(string name, Command command)
    {
        var plain = $"--{Words(IsSize(name) ? name[..^2] : name, "-")}";
        var own = Options.TryGetValue(name, out var known) ? $"--{known}" : plain;
        var options = HelpText.OptionsOf(command).Select(option => option.Name).ToHashSet(StringComparer.Ordinal);
        return options.Contains(own) ? own : options.Contains(plain) ? plain : null;
    }

    // People count from 1, and count what stands before the number.
    private static IEnumerable<string> Counted(List<string> names)
    {
        for (var at = 0; at < names.Count; at++)
        {
            var name = IsSize(names[at]) ? Words(names[at][..^2], " ") : names[at];
            yield return at + 1 < names.Count && IsNumber(names[at + 1])
                ? string.Create(CultureInfo.InvariantCulture, $"{name} {int.Parse(names[++at], CultureInfo.InvariantCulture) + 1}")
                : name;
        }
    }

    // RFC 6901: a pointer in a fragment escapes as addresses do, and has ~1 for a slash and ~0 for a tilde.
    private static List<string> Read(string pointer) => [.. pointer.TrimStart('#', '?', '/').Split('/', StringSplitOptions.RemoveEmptyEntries)
        .Select(name => Uri.UnescapeDataString(name).Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    private static bool IsNumber(string name) => int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out _);

    private static bool IsSize(string name) => name.EndsWith("Mm", StringComparison.Ordinal);

    private static string Words(string name, string between) => Hump().Replace(name, hump => between + hump.Value.ToLowerInvariant());

    [GeneratedRegex("(?<=[a-z])[A-Z]", RegexOptions.CultureInvariant)]
    private static partial Regex Hump();
}
