using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Humidity and temperature as makers write them: <c>30..60 %</c>, <c>21C</c>, <c>70 F</c>.</summary>
public static partial class ClimateText
{
    /// <summary>Reads a range of relative humidity in per cent, <c>30..60</c>, <c>30% - 60%</c> or <c>30 to 60</c>; never throws. Whether wood can live in it is not asked.</summary>
    public static bool TryParseHumidity(string? text, out (decimal Low, decimal High) range, [NotNullWhen(false)] out string? error)
    {
        if (Match(Range(), text) is not { } match)
        {
            (range, error) = (default, $"{LengthText.Quote(text ?? "")} is no range of relative humidity: write for instance 30..60.");
            return false;
        }

        (range, error) = ((Number(match, "low"), Number(match, "high")), null);
        return true;
    }

    /// <summary>Reads a temperature, <c>21C</c> or <c>70 F</c>, in degrees Celsius, from Fahrenheit to a tenth; never throws.</summary>
    public static bool TryParseTemperature(string? text, out decimal celsius, [NotNullWhen(false)] out string? error)
    {
        if (Match(Degrees(), text) is not { } match)
        {
            (celsius, error) = (0, $"{LengthText.Quote(text ?? "")} is no temperature: write for instance 21C or 70F.");
            return false;
        }

        var degrees = Number(match, "degrees");
        (celsius, error) = (match.Groups["scale"].Value is "F" or "f" ? decimal.Round((degrees - 32) * 5 / 9, 1) : degrees, null);
        return true;
    }

    /// <summary>A range of humidity that can be read again: <c>30..60 %</c>.</summary>
    public static string Humidity(decimal low, decimal high) => string.Create(CultureInfo.InvariantCulture, $"{low:0.#}..{high:0.#} %");

    /// <summary>For instance <c>21 C (70 F)</c>: both, whatever the unit of lengths.</summary>
    public static string Temperature(decimal celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0.#} C ({(celsius * 9 / 5) + 32:0} F)");

    private static Match? Match(Regex pattern, string? text) =>
        text is { Length: <= LengthReading.LongestText } && pattern.Match(text) is { Success: true } match ? match : null;

    private static decimal Number(Match match, string name) =>
        decimal.Parse(match.Groups[name].Value, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^ *(?<low>[0-9]{1,3}(?:\.[0-9])?) *%? *(?:\.\.|-| to ) *(?<high>[0-9]{1,3}(?:\.[0-9])?) *%? *$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Range();

    [GeneratedRegex(@"^ *(?<degrees>-?[0-9]{1,3}(?:\.[0-9])?) *\u00b0? *(?<scale>[CF]) *$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Degrees();
}
