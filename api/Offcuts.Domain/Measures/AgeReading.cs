using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Ages as people write them: <c>2y</c>, <c>18 months</c>, <c>90 days</c>.</summary>
public static partial class AgeReading
{
    /// <summary>The greatest age that is read, in days: 100 years of 365.</summary>
    public const int MostDays = 36_500;

    /// <summary>Reads an age.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="today">The day from which it counts back.</param>
    /// <param name="since">The day on which what is just so old began.</param>
    /// <param name="error">What is wrong and how to mend it.</param>
    public static bool TryParse(string text, DateOnly today, out DateOnly since, [NotNullWhen(false)] out string? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        since = default;
        error = null;
        var read = Pattern().Match(text.Trim());
        if (!read.Success || !int.TryParse(read.Groups["number"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            error = $"{LengthText.Quote(text)} is no age: give for instance 2y, 18 months, 6 weeks or 90 days.";
            return false;
        }

        var (days, count) = read.Groups["years"].Success ? (365L, number) : read.Groups["months"].Success ? (30L, number) : read.Groups["weeks"].Success ? (7L, number) : (1L, number);
        if (days * count > MostDays)
        {
            error = $"{LengthText.Quote(text)} is older than any board: give at most 100 years.";
            return false;
        }

        since = read.Groups["years"].Success ? today.AddYears(-number)
            : read.Groups["months"].Success ? today.AddMonths(-number)
            : today.AddDays(-(int)(days * number));
        // Leap days and long months count too: 100 years are some days more than so many times 365.
        var oldest = today.AddDays(-MostDays);
        since = since < oldest ? oldest : since;
        return true;
    }

    [GeneratedRegex(
        @"^(?<number>[0-9]{1,6})\s*((?<years>y|yrs?|years?)|(?<months>mo|months?)|(?<weeks>w|wks?|weeks?)|d|days?)$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Pattern();
}
