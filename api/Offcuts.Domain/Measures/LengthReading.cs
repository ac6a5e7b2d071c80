using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Numerics;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>What a written length says, before it is checked: a ratio of ticks, so that nothing is rounded on the way.</summary>
/// <param name="Ticks">Ticks times the divisor.</param>
/// <param name="Divisor">The divisor, above zero.</param>
/// <param name="IsMetric">Whether it was written in a metric unit.</param>
internal readonly partial record struct LengthReading(BigInteger Ticks, BigInteger Divisor, bool IsMetric)
{
    internal const int LongestText = 60;
    private const string HowToWrite = "Write for instance 36 1/2, 3' 4 1/2\", 0.75in, 915mm or 91.5cm.";

    /// <summary>Reads a length whose bare numbers are in the given unit.</summary>
    public static bool TryRead(string? text, LengthUnit bareUnit, out LengthReading reading, [NotNullWhen(false)] out string? error)
    {
        reading = default;
        if (string.IsNullOrWhiteSpace(text))
        {
            error = $"No length is given. {HowToWrite}";
            return false;
        }

        if (text.Length > LongestText || Written().Match(LengthSigns.Plain(text)) is not { Success: true } match)
        {
            error = WhyNot(text);
            return false;
        }

        return TryRead(match, text, bareUnit, out reading, out error);
    }

    /// <summary>The unit that a written length names last; null if it names none or is no length.</summary>
    public static LengthUnit? UnitIn(string text)
    {
        var match = Written().Match(text.Length > LongestText ? "" : LengthSigns.Plain(text));
        return match.Groups["unit"] is { Success: true } unit ? LengthUnits.Named(unit.Value)
            : match.Groups["feet"].Success ? LengthUnit.Foot
            : null;
    }

    /// <summary>Whether a written length is a rough thickness in quarters of an inch: 4/4, 5/4, 8/4.</summary>
    public static bool IsQuarters(string text) => Quarters().IsMatch(LengthSigns.Plain(text));

    private static bool TryRead(
        Match match, string text, LengthUnit bareUnit, out LengthReading reading, [NotNullWhen(false)] out string? error)
    {
        var (feet, number) = (match.Groups["feet"], match.Groups["number"]);
        var unit = match.Groups["unit"] is { Success: true } written ? LengthUnits.Named(written.Value)!.Value
            : feet.Success || IsQuarters(text) ? LengthUnit.Inch
            : bareUnit;
        reading = default;
        error = null;
        if (feet.Success && unit != LengthUnit.Inch)
        {
            error = $"{LengthText.Quote(text)} mixes feet with metric units: use one of them.";
        }
        else if (unit.IsMetric() && !match.Groups["unit"].Success && number.Value.Contains('/', StringComparison.Ordinal))
        {
            error = $"{LengthText.Quote(text)} has a fraction but no unit, and bare numbers here are metric. "
                + "Write the unit, for instance 3/4in, or a decimal number.";
        }
        else
        {
            var feetReading = feet.Success ? Of(feet.Value, LengthUnit.Foot) : new(0, 1, false);
            var numberReading = number.Success ? Of(number.Value, unit) : new(0, 1, unit.IsMetric());
            reading = Sum(feetReading, numberReading);
            error = reading.Divisor.IsZero
                ? $"{LengthText.Quote(text)} has a fraction that is not one: the upper number goes below the lower, and the lower is above zero."
                : null;
        }

        return error is null;
    }

    // A divisor of zero stands for a fraction that cannot be right.
    private static LengthReading Of(string number, LengthUnit unit)
    {
        if (Mixed().Match(number) is { Success: true } mixed)
        {
            var (numerator, denominator) = (Whole(mixed.Groups["n"]), Whole(mixed.Groups["d"]));
            var hasWhole = mixed.Groups["w"].Success;
            return hasWhole && numerator >= denominator
                ? default
                : new(((hasWhole ? Whole(mixed.Groups["w"]) * denominator : 0) + numerator) * unit.Ticks(), denominator, unit.IsMetric());
        }

        var point = number.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : number.Length - point - 1;
        var digits = BigInteger.Parse(number.Replace(".", "", StringComparison.Ordinal), NumberStyles.None, CultureInfo.InvariantCulture);
        return new(digits * unit.Ticks(), BigInteger.Pow(10, decimals), unit.IsMetric());
    }

    private static LengthReading Sum(LengthReading a, LengthReading b) =>
        new((a.Ticks * b.Divisor) + (b.Ticks * a.Divisor), a.Divisor * b.Divisor, b.IsMetric);

    private static BigInteger Whole(Group digits) => BigInteger.Parse(digits.Value, NumberStyles.None, CultureInfo.InvariantCulture);

    private static string WhyNot(string text)
    {
        var plain = LengthSigns.Plain(text);
        var quoted = LengthText.Quote(text);
        if (text.Length > LongestText)
        {
            return $"{quoted} is too long for a length. {HowToWrite}";
        }

        if (DecimalComma().IsMatch(plain))
        {
            return $"{quoted} has a decimal comma: write a decimal point, for instance 91.5cm.";
        }

        if (plain.StartsWith('-'))
        {
            return $"{quoted} is negative: give a length above zero.";
        }

        if (plain.StartsWith('~'))
        {
            return $"{quoted} is a rounded value: give the exact one, without the ~.";
        }

        return Unit().Match(plain) is { Success: true } match && LengthUnits.Named(match.Groups["unit"].Value) is null
            ? $"{quoted}: '{match.Groups["unit"].Value}' is not a unit of length. Use in, ft, mm, cm or m."
            : $"{quoted} is not a length. {HowToWrite}";
    }

    // Fractions come before decimals, so that 36 1/2 is not read as 36 and a rest. All quantifiers are bounded by LongestText.
    internal const string Amount = @"(?:(?:[0-9]+(?: *- *| +))?[0-9]+ */ *[0-9]+|[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+)";

    [GeneratedRegex(
        $"""^(?=.)(?:(?<feet>{Amount}) *(?:'|ft\.?|foot|feet) *-? *)?(?:(?<number>{Amount}) *(?<unit>"|inches|inch|in\.?|mm|cm|m)?)?$""",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Written();

    [GeneratedRegex("^(?:(?<w>[0-9]+)(?: *- *| +))?(?<n>[0-9]+) */ *(?<d>[0-9]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Mixed();

    [GeneratedRegex("^(?:[4-9]|[1-9][0-9])/4$", RegexOptions.CultureInvariant)]
    private static partial Regex Quarters();

    [GeneratedRegex("[0-9],[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();

    [GeneratedRegex("[0-9] *(?<unit>[a-z]+)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Unit();
}
