using System.Globalization;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>Times as they are written on a command line: <c>500ms</c>, <c>5s</c>, <c>1.5s</c>, <c>2m</c>.</summary>
internal static class Duration
{
    private static readonly (string Unit, int Milliseconds)[] Units = [("ms", 1), ("s", 1000), ("m", 60_000)];

    /// <summary>The time in milliseconds.</summary>
    /// <exception cref="CliException">It is no time.</exception>
    public static int Milliseconds(string text, string option)
    {
        foreach (var (unit, milliseconds) in Units)
        {
            if (text.EndsWith(unit, StringComparison.Ordinal)
                && decimal.TryParse(text.AsSpan(0, text.Length - unit.Length).Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
                && value * milliseconds is > 0 and <= int.MaxValue and var total)
            {
                return (int)total;
            }
        }

        throw CliException.Invalid($"{option}: '{text}' is no time. Give a number with its unit, for instance 5s, 500ms or 2m.");
    }
}
