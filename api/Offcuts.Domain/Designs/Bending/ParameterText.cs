using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>
/// Parameters as makers write them: <c>30in..48in by 1/4in default 36in</c> for a length, <c>3..7</c> for a count. Lengths name their unit at least once, which
/// holds for the bare numbers beside it; whole numbers without any unit are counts.
/// </summary>
public static partial class ParameterText
{
    private const string HowToWrite = "Write for instance 30in..48in by 1/4in default 36in, or 3..7.";

    private static readonly string[] WordNames = ["from", "to", "step", "default"];

    /// <summary>Whether a text is a range and no formula.</summary>
    public static bool IsRange(string text) => Between().IsMatch(LengthSigns.Plain(text));

    /// <summary>Reads a parameter; never throws.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="text">What was written.</param>
    /// <param name="parameter">The parameter; its limits are checked by <see cref="DesignRules"/>.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out Parameter? parameter, [NotNullWhen(false)] out string? error)
    {
        (parameter, error) = (null, null);
        if (text.Length > Formula.MaxText || Written().Match(LengthSigns.Plain(text)) is not { Success: true } match)
        {
            error = $"{LengthText.Quote(text)} is no range of values. {HowToWrite}";
            return false;
        }

        string?[] words = [.. WordNames.Select(part => match.Groups[part] is { Success: true } group ? group.Value : null)];
        var units = words.OfType<string>().Select(LengthReading.UnitIn).OfType<LengthUnit>().Select(LengthUnits.Beside).Distinct().ToList();
        var numbers = new long?[words.Length];
        if (units.Count == 0)
        {
            return TryNumbers(words, TryCount, numbers, out error) && Made(ParameterKind.Count, 1, out parameter);
        }

        if (units.Count > 1 && words.OfType<string>().Any(word => LengthReading.UnitIn(word) is null))
        {
            error = $"{LengthText.Quote(text)} has numbers in different units and one without: write a unit on every number.";
            return false;
        }

        var isMetric = units[0].IsMetric();
        return TryNumbers(words, TryTicks, numbers, out error)
            && Made(ParameterKind.Length, isMetric ? Length.TicksPerMillimetre : 4 * Length.TicksPerSixtyFourth, out parameter);

        bool Made(ParameterKind kind, long step, out Parameter made)
        {
            made = new Parameter(name, kind, numbers[0]!.Value, numbers[1]!.Value, numbers[2] ?? step, numbers[3] ?? numbers[0]!.Value);
            return true;
        }

        bool TryTicks(string word, out long ticks, [NotNullWhen(false)] out string? fault)
        {
            var read = LengthText.TryParseIn(word, units[0], zeroAllowed: false, out var length, out fault);
            ticks = length.Ticks;
            return read;
        }
    }

    private static bool TryNumbers(string?[] words, TryNumber tryNumber, long?[] numbers, [NotNullWhen(false)] out string? error)
    {
        error = null;
        foreach (var (index, word) in words.Index())
        {
            if (word is not null)
            {
                if (!tryNumber(word, out var number, out error))
                {
                    return false;
                }

                numbers[index] = number;
            }
        }

        return error is null;
    }

    private static bool TryCount(string word, out long count, [NotNullWhen(false)] out string? error)
    {
        error = long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out count)
            ? null
            : $"{LengthText.Quote(word)} is no whole number, and no number here has a unit: write the unit of lengths, as in 30in..48in; counts are whole.";
        return error is null;
    }

    private delegate bool TryNumber(string word, out long number, [NotNullWhen(false)] out string? error);

    [GeneratedRegex(@"^(?<from>.+?) *(?:\.\.| to ) *(?<to>.+?)(?: by (?<step>.+?))?(?:,? default (?<default>.+))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Written();

    [GeneratedRegex(@"\.\.| to ", RegexOptions.CultureInvariant)]
    private static partial Regex Between();
}
