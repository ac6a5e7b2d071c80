using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Moisture readings as makers write them: <c>8%</c>, <c>8.5 % on 2026-11-01</c>.</summary>
public static partial class MoistureText
{
    private const string Day = "yyyy-MM-dd";

    /// <summary>Reads a reading; never throws. Without a day it was taken on the day on which it is told.</summary>
    public static bool TryParse(string? text, out MoistureReading reading, [NotNullWhen(false)] out string? error)
    {
        reading = default;
        if (text?.Length > LengthReading.LongestText || Written().Match(text ?? "") is not { Success: true } match)
        {
            error = $"{LengthText.Quote(text ?? "")} is no moisture reading: write for instance 8%, or 8.5% on 2026-11-01.";
            return false;
        }

        var day = default(DateOnly);
        if (match.Groups["day"] is { Success: true } written
            && !DateOnly.TryParseExact(written.Value, Day, CultureInfo.InvariantCulture, DateTimeStyles.None, out day))
        {
            error = $"{LengthText.Quote(written.Value)} is not a date: write year, month and day, for instance 2026-11-01.";
            return false;
        }

        var percent = decimal.Parse(match.Groups["percent"].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        reading = new(percent, match.Groups["day"].Success ? day : null);
        error = reading.Fault();
        return error is null;
    }

    /// <summary>A reading in words that can be read again: <c>8.5 % on 2026-11-01</c>.</summary>
    public static string Format(MoistureReading reading) => Percent(reading.Percent)
        + (reading.On is { } day ? $" on {day.ToString(Day, CultureInfo.InvariantCulture)}" : "");

    /// <summary>A moisture content alone: <c>8.5 %</c>.</summary>
    public static string Percent(decimal percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.#} %");

    [GeneratedRegex(@"^ *(?<percent>[0-9]{1,9}(?:\.[0-9]{1,9})?) *%?(?: *mc)?(?:,? *(?:on +)?(?<day>[0-9]{4}-[0-9]{2}-[0-9]{2}))? *$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Written();
}
