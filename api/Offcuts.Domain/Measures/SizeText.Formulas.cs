using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>One number of a size that may follow by a formula.</summary>
/// <param name="Plain">The length, where it is one; else zero.</param>
/// <param name="Formula">The formula, where it is none.</param>
public readonly record struct OpenSide(Length Plain, string? Formula);

public static partial class SizeText
{
    /// <summary>
    /// Splits a size of which any number may be a formula, <c>3/4 x 2..depth x top - 6in</c>, x between blanks; never throws. What is a length as it stands is read
    /// as in any size, a unit on one number for the bare ones beside it; the formulas are not looked into.
    /// </summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of numbers where none is written at all.</param>
    /// <param name="least">The least of every side.</param>
    /// <param name="most">The most of every side; the same where a side is no range.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParseFormulas(
        string? text, DisplayUnit bareUnit, out OpenSide[] least, out OpenSide[] most, [NotNullWhen(false)] out string? error)
    {
        (least, most) = (new OpenSide[3], new OpenSide[3]);
        var sides = Apart().Split(LengthSigns.Plain(text ?? "")).Select(side => Between().Split(side)).ToArray();
        if (sides.Length != 3 || sides.Any(side => side.Length > 2))
        {
            error = $"{LengthText.Quote(text ?? "")} has {sides.Length} of 3 numbers. Write thickness x width x length with blanks around x, each a number, a formula or from..to of them, for instance 3/4 x 5 x top - 6in.";
            return false;
        }

        // Only what stands there as a length carries its unit to the bare ones.
        var plain = sides.SelectMany(side => side).Where(number => LengthText.TryParse(number, DisplayUnit.Inch, out _, out _)).ToArray();
        if (!TryUnit(plain, bareUnit, text!, out var unit, out error))
        {
            return false;
        }

        for (var at = 0; at < 3; at++)
        {
            least[at] = NumberOf(sides[at][0], unit);
            most[at] = NumberOf(sides[at][^1], unit);
        }

        return true;
    }

    private static OpenSide NumberOf(string text, LengthUnit unit) =>
        LengthText.TryParseIn(text, unit, zeroAllowed: false, out var length, out _) ? new(length, null) : new(Length.Zero, text);

    [GeneratedRegex(" (?:[xX]|by) ", RegexOptions.CultureInvariant)]
    private static partial Regex Apart();
}
