using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Two lengths from the smaller to the larger: <c>2 to 5</c>, <c>0..4in</c>. A unit on one holds for both.</summary>
public static partial class RangeText
{
    /// <summary>Reads a range; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit where none is written.</param>
    /// <param name="fromZero">Whether the range may begin at zero.</param>
    /// <param name="from">The smaller length.</param>
    /// <param name="to">The larger length, always above the smaller.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(
        string? text, DisplayUnit bareUnit, bool fromZero, out Length from, out Length to, [NotNullWhen(false)] out string? error) =>
        TryParseIn(text, bareUnit.ToLengthUnit(), fromZero, out from, out to, out error);

    internal static bool TryParseIn(
        string? text, LengthUnit bareUnit, bool fromZero, out Length from, out Length to, [NotNullWhen(false)] out string? error)
    {
        (from, to) = (Length.Zero, Length.Zero);
        if (Between().Split(LengthSigns.Plain(text ?? "")) is not [var first, var last])
        {
            error = $"{LengthText.Quote(text ?? "")} is not a range. Write for instance 2 to 5in, or 2..5in.";
            return false;
        }

        var unit = LengthReading.UnitIn(last) ?? LengthReading.UnitIn(first) ?? bareUnit;
        if (!LengthText.TryParseIn(first, unit, fromZero, out from, out error)
            || !LengthText.TryParseIn(last, unit, zeroAllowed: true, out to, out error))
        {
            return false;
        }

        error = from < to ? null : $"{LengthText.Quote(text!)} does not go from the smaller to the larger: write for instance 2 to 5in.";
        return error is null;
    }

    /// <summary>The unit that a range names; null if it names none.</summary>
    internal static LengthUnit? UnitIn(string text) =>
        Between().Split(LengthSigns.Plain(text)) is [var first, var last]
            ? LengthReading.UnitIn(last) ?? LengthReading.UnitIn(first)
            : null;

    [GeneratedRegex(@" *(?:\.\.| to ) *", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Between();
}
