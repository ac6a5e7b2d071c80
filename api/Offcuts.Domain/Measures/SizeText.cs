using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>
/// Sizes as makers write them, thickness x width x length: <c>3/4 x 5 1/2 x 36</c>, <c>4/4 x 7 x 62in</c>,
/// <c>18mm x 300 x 900</c>, and <c>2x4 x 8ft</c> for dressed softwood by its nominal size.
/// </summary>
/// <remarks>
/// A unit on one number holds for the bare ones beside it: inches beside inches or feet, millimetres beside millimetres or metres,
/// centimetres beside centimetres. If the written units differ in that, every number needs its own.
/// Two whole numbers without spaces between them are a nominal size where the wood is a softwood (<see cref="TryParseSoftwood"/>), whether or
/// not the length stands apart; with spaces, and for any other wood, all numbers are sizes as measured. So a space before the length
/// changes nothing.
/// </remarks>
public static partial class SizeText
{
    private const string HowToWrite = "Write thickness x width x length, for instance 3/4 x 5 1/2 x 36in.";

    /// <summary>Reads a size as measured; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of numbers where none is written at all.</param>
    /// <param name="size">The size; all zero if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, DisplayUnit bareUnit, out Dimensions size, [NotNullWhen(false)] out string? error)
    {
        size = default;
        if (!TryLengths(LengthSigns.Plain(text ?? ""), text, 3, HowToWrite, bareUnit, out var lengths, out error))
        {
            return false;
        }

        size = new(lengths[0], lengths[1], lengths[2]);
        return true;
    }

    /// <summary>Reads the size of a board of softwood, as measured or by its nominal name; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of numbers where none is written at all.</param>
    /// <param name="size">The size, dressed if it was nominal; all zero if there is an error.</param>
    /// <param name="nominal">The nominal name that was read, <c>2x4</c>: such wood is dressed, never rough. Null if it was a size as measured.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParseSoftwood(
        string? text, DisplayUnit bareUnit, out Dimensions size, out string? nominal, [NotNullWhen(false)] out string? error)
    {
        nominal = null;
        if (Nominal().Match(LengthSigns.Plain(text ?? "")) is not { Success: true } match
            || !NominalSizes.TryDressed(match.Groups["nominal"].Value, out var thickness, out var width))
        {
            return TryParse(text, bareUnit, out size, out error);
        }

        size = default;
        if (!LengthText.TryParse(match.Groups["length"].Value, bareUnit, out var length, out error))
        {
            return false;
        }

        nominal = match.Groups["nominal"].Value.ToLowerInvariant();
        size = new(thickness, width, length);
        return true;
    }

    /// <summary>Reads a size.</summary>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>: the text is no size.</exception>
    public static Dimensions Parse(string text, DisplayUnit bareUnit) =>
        TryParse(text, bareUnit, out var size, out var error) ? size : throw new OffcutsException(ErrorCode.Invalid, error);

    /// <summary>Whether a text is a size by its nominal name if the wood is a softwood: <c>2x4 x 8ft</c>.</summary>
    public static bool IsNominal(string? text) =>
        Nominal().Match(LengthSigns.Plain(text ?? "")) is { Success: true } match
        && NominalSizes.TryDressed(match.Groups["nominal"].Value, out _, out _);

    /// <summary>Says how a nominal name was read: <c>read as nominal 2x4: 1 1/2 x 3 1/2</c>.</summary>
    public static string FormatNominal(string nominal, Dimensions size) =>
        $"read as nominal {nominal}: {LengthText.Number(size.Thickness, DisplayUnit.Inch)} x {LengthText.Number(size.Width, DisplayUnit.Inch)}";

    /// <summary>Reads width x length, for what has its thickness elsewhere; never throws.</summary>
    public static bool TryParseFace(
        string? text, DisplayUnit bareUnit, out Length width, out Length length, [NotNullWhen(false)] out string? error)
    {
        const string How = "Write width x length, for instance 5 1/2 x 36in.";
        var read = TryLengths(LengthSigns.Plain(text ?? ""), text, 2, How, bareUnit, out var lengths, out error);
        (width, length) = read ? (lengths[0], lengths[1]) : default;
        return read;
    }

    /// <summary>
    /// Prints a size, thickness first: <c>3/4 x 5 1/2 x 36 in</c> or <c>19 x 140 x 915 mm</c>. In a shop that works in inches a size that is
    /// exact only in tenths of a millimetre is printed in millimetres; else rounded numbers are marked with <c>~</c>.
    /// </summary>
    public static string Format(Dimensions size, DisplayUnit unit) => Format([size.Thickness, size.Width, size.Length], unit);

    /// <summary>Prints a size by the same rule, with the sides that were only estimated called so: <c>3/4 x 5 1/2 x about 36 in</c>.</summary>
    public static string Format(Dimensions size, Estimates estimates, DisplayUnit unit)
    {
        Length[] sides = [size.Thickness, size.Width, size.Length];
        bool[] estimated = [estimates.Thickness, estimates.Width, estimates.Length];
        var shown = Shown(sides, unit);
        return Joined(sides.Zip(estimated, (side, isEstimated) => $"{(isEstimated ? "about " : "")}{LengthText.Number(side, shown)}"), shown);
    }

    /// <summary>Prints width x length by the same rule: <c>5 1/2 x 36 in</c>.</summary>
    public static string FormatFace(Length width, Length length, DisplayUnit unit) => Format([width, length], unit);

    /// <summary>Prints a size without loss; what it prints can be read again.</summary>
    public static string FormatExact(Dimensions size) => string.Join(
        " x ", LengthText.FormatExact(size.Thickness), LengthText.FormatExact(size.Width), LengthText.FormatExact(size.Length));

    private static string Format(Length[] sides, DisplayUnit unit)
    {
        var shown = Shown(sides, unit);
        return Joined(sides.Select(side => LengthText.Number(side, shown)), shown);
    }

    private static string Joined(IEnumerable<string> numbers, DisplayUnit shown) =>
        $"{string.Join(" x ", numbers)} {(shown == DisplayUnit.Inch ? "in" : "mm")}";

    private static DisplayUnit Shown(Length[] sides, DisplayUnit unit) =>
        unit == DisplayUnit.Inch && !sides.All(side => side.IsWholeSixtyFourths) && sides.All(side => side.IsWholeTenths)
            ? DisplayUnit.Millimetre
            : unit;

    private static bool TryLengths(
        string plain, string? text, int count, string howToWrite, DisplayUnit bareUnit,
        out Length[] lengths, [NotNullWhen(false)] out string? error)
    {
        lengths = new Length[count];
        var numbers = Times().Split(plain);
        if (numbers.Length != count)
        {
            error = string.IsNullOrWhiteSpace(text)
                ? $"No size is given. {howToWrite}"
                : $"{LengthText.Quote(text)} has {numbers.Length} of {count} numbers. {howToWrite}";
            return false;
        }

        if (!TryUnit(numbers, bareUnit, text!, out var unit, out error))
        {
            return false;
        }

        for (var index = 0; index < count; index++)
        {
            if (!LengthText.TryParseIn(numbers[index], unit, zeroAllowed: false, out lengths[index], out error))
            {
                return false;
            }
        }

        return true;
    }

    // The unit of the bare numbers, from the units of the others.
    private static bool TryUnit(
        string[] numbers, DisplayUnit bareUnit, string text, out LengthUnit unit, [NotNullWhen(false)] out string? error)
    {
        error = null;
        unit = bareUnit.ToLengthUnit();
        var carried = numbers.Select(LengthReading.UnitIn).OfType<LengthUnit>().Select(LengthUnits.Beside).Distinct().ToList();
        var anyBare = numbers.Any(number => LengthReading.UnitIn(number) is null && !LengthReading.IsQuarters(number));
        if (carried.Count > 1 && anyBare)
        {
            error = $"{LengthText.Quote(text)} has numbers in different units and one without: write a unit on every number.";
            return false;
        }

        unit = carried.Count == 1 ? carried[0] : unit;
        return true;
    }

    [GeneratedRegex(@" *(?:[xX*]|\bby\b) *", RegexOptions.CultureInvariant)]
    private static partial Regex Times();

    [GeneratedRegex("^(?<nominal>[0-9]+[xX][0-9]+) *(?:[xX*]|by) *(?<length>[^xX*]+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Nominal();
}
