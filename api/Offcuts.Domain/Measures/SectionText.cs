using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Cross-sections as makers write them: <c>1 1/4</c>, <c>1.25 sq in</c>, <c>800 mm2</c>, <c>8 cm2</c>.</summary>
public static partial class SectionText
{
    private const decimal SquareTicksPerSquareInch = (decimal)Length.TicksPerInch * Length.TicksPerInch;
    private const decimal SquareTicksPerSquareMillimetre = (decimal)Length.TicksPerMillimetre * Length.TicksPerMillimetre;

    /// <summary>The largest section that is taken, 1 square metre.</summary>
    public static Area Largest { get; } = Length.FromMillimetres(1000) * Length.FromMillimetres(1000);

    /// <summary>Reads a section; never throws. What is not exact is rounded up to a square tick.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of lengths whose square is meant where no unit is written.</param>
    /// <param name="section">The section.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, DisplayUnit bareUnit, out Area section, [NotNullWhen(false)] out string? error)
    {
        section = default;
        var match = Written().Match(text?.Length > LengthReading.LongestText ? "" : text ?? "");
        if (!match.Success || Number(match) is not { } number)
        {
            error = $"{LengthText.Quote(text ?? "")} is no section: write for instance 1 1/4 sq in, or 800 mm2.";
            return false;
        }

        var perUnit = match.Groups["unit"].Value.ToLowerInvariant() switch
        {
            "" => bareUnit == DisplayUnit.Inch ? SquareTicksPerSquareInch : SquareTicksPerSquareMillimetre,
            ['c', ..] or [_, 'q', _, 'c', ..] => SquareTicksPerSquareMillimetre * 100,
            ['m', ..] or [_, 'q', _, 'm', ..] => SquareTicksPerSquareMillimetre,
            _ => SquareTicksPerSquareInch,
        };
        section = Area.FromSquareTicks((long)decimal.Ceiling(number * perUnit));
        error = section > default(Area) && section <= Largest ? null : $"{LengthText.Quote(text!)}: give a section of more than zero and at most 1 m2.";
        return error is null;
    }

    /// <summary>A section in a unit: <c>1.25 sq in</c>, <c>8 cm2</c>; to a thousandth.</summary>
    public static string Format(Area section, DisplayUnit unit) => unit == DisplayUnit.Inch
        ? string.Create(CultureInfo.InvariantCulture, $"{section.SquareTicks / SquareTicksPerSquareInch:0.###} sq in")
        : string.Create(CultureInfo.InvariantCulture, $"{section.SquareMillimetres / 100:0.###} cm2");

    private static decimal? Number(Match match)
    {
        var (whole, over, under) = (Part("whole"), Part("over"), Part("under"));
        return match.Groups["under"].Success && under == 0 ? null : whole + (match.Groups["under"].Success ? over / under : 0);

        decimal Part(string name) => match.Groups[name] is { Success: true } digits ? decimal.Parse(digits.Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) : 0;
    }

    [GeneratedRegex(
        @"^ *(?:(?<whole>[0-9]{1,6}(?:\.[0-9]{1,6})?)(?![0-9/]))?(?: *-? *(?<over>[0-9]{1,4})/(?<under>[0-9]{1,4}))?(?<=[0-9]) *(?<unit>sq\.? ?(?:in|cm|mm)|(?:in|cm|mm)(?:2|\^2|\u00b2))? *$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Written();
}
