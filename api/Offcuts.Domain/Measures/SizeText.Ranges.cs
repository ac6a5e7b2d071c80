using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

public static partial class SizeText
{
    private const string HowToWriteRange = "Write thickness x width x length, each one number or from..to, for instance 3/4..13/16 x 2..3 x 30in.";

    /// <summary>Reads a size of which every side may be a range, <c>3/4..13/16 x 2..3 x 30</c>; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of numbers where none is written at all.</param>
    /// <param name="least">The least of every side.</param>
    /// <param name="most">The most of every side; null if no side is a range.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParseRange(
        string? text, DisplayUnit bareUnit, out Dimensions least, out Dimensions? most, [NotNullWhen(false)] out string? error)
    {
        (least, most) = (default, null);
        var sides = Times().Split(LengthSigns.Plain(text ?? "")).Select(side => Between().Split(side)).ToArray();
        if (sides.All(side => side.Length == 1))
        {
            return TryParse(text, bareUnit, out least, out error);
        }

        if (sides.Length != 3 || sides.Any(side => side.Length > 2))
        {
            error = $"{LengthText.Quote(text!)} is no size with ranges. {HowToWriteRange}";
            return false;
        }

        if (!TryUnit([.. sides.SelectMany(side => side)], bareUnit, text!, out var unit, out error))
        {
            return false;
        }

        var (from, to) = (new Length[3], new Length[3]);
        for (var at = 0; at < 3; at++)
        {
            if (!LengthText.TryParseIn(sides[at][0], unit, zeroAllowed: false, out from[at], out error)
                || !LengthText.TryParseIn(sides[at][^1], unit, zeroAllowed: false, out to[at], out error))
            {
                return false;
            }

            if (sides[at].Length == 2 && from[at] >= to[at])
            {
                error = $"{LengthText.Quote($"{sides[at][0]}..{sides[at][1]}")} does not go from the smaller to the larger: write for instance 2..3.";
                return false;
            }
        }

        (least, most) = (new(from[0], from[1], from[2]), new(to[0], to[1], to[2]));
        return true;
    }

    /// <summary>
    /// Prints a size with its ranges, <c>3/4..13/16 x 2..3 x 30 in</c>, by the rule of <see cref="Format(Dimensions, DisplayUnit)"/>.
    /// </summary>
    public static string Format(Dimensions least, Dimensions? most, DisplayUnit unit) => most is { } top
        ? Format([(least.Thickness, top.Thickness), (least.Width, top.Width), (least.Length, top.Length)], unit)
        : Format(least, unit);

    private static string Format((Length From, Length To)[] sides, DisplayUnit unit)
    {
        var shown = Shown([.. sides.Select(side => side.From), .. sides.Select(side => side.To)], unit);
        var numbers = sides.Select(side => side.From == side.To
            ? LengthText.Number(side.From, shown)
            : $"{LengthText.Number(side.From, shown)}..{LengthText.Number(side.To, shown)}");
        return Joined(numbers, shown);
    }

    [GeneratedRegex(@" *(?:\.\.| to ) *", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Between();
}
