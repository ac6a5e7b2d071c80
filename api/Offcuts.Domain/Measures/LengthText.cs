using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Numerics;

namespace Offcuts.Domain;

/// <summary>
/// Lengths as makers write them: <c>36 1/2</c>, <c>36-1/2"</c>, <c>3' 4 1/2"</c>, <c>3ft 4in</c>, <c>0.75in</c>, <c>915mm</c>,
/// <c>91.5 cm</c>, <c>1.2m</c>, and <c>5/4</c> as a rough thickness of 1 1/4 in.
/// </summary>
/// <remarks>
/// A hyphen between whole and fraction, or between feet and inches, means "and"; after feet the inch mark may be left off
/// (both are usual in drawings). A number without a unit is in the unit that the caller names.
/// </remarks>
public static class LengthText
{
    private const int FinestInch = 64;

    /// <summary>Reads a length above zero and at most 100 m; never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of a number that names none.</param>
    /// <param name="length">The length, exact; zero if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(
        string? text, DisplayUnit bareUnit, out Length length, [NotNullWhen(false)] out string? error) =>
        TryParse(text, bareUnit, zeroAllowed: false, out length, out error);

    /// <summary>Reads a length at most 100 m, zero too if that is allowed (an allowance, a place on a board); never throws.</summary>
    public static bool TryParse(
        string? text, DisplayUnit bareUnit, bool zeroAllowed, out Length length, [NotNullWhen(false)] out string? error) =>
        TryParseIn(text, bareUnit.ToLengthUnit(), zeroAllowed, out length, out error);

    /// <summary>Reads a length.</summary>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>: the text is no length.</exception>
    public static Length Parse(string text, DisplayUnit bareUnit) =>
        TryParse(text, bareUnit, out var length, out var error) ? length : throw new OffcutsException(ErrorCode.Invalid, error);

    /// <summary>
    /// Prints a length in a unit: <c>36 1/2"</c>, reduced and to 64ths, or <c>915 mm</c>, to tenths. A value that is not exact
    /// there is rounded to the nearest and marked: <c>~14 11/64"</c>.
    /// </summary>
    /// <param name="length">The length; a difference below zero is printed with a minus sign.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="finestInch">The finest fraction of an inch: 1, 2, 4, 8, 16, 32 or 64.</param>
    public static string Format(Length length, DisplayUnit unit, int finestInch = FinestInch) => unit switch
    {
        DisplayUnit.Inch => $"{Number(length, unit, finestInch)}\"",
        DisplayUnit.Millimetre => $"{Number(length, unit, finestInch)} mm",
    };

    /// <summary>Prints a length without loss, in inches if it is a whole number of 64ths, else in millimetres; what it prints can be read again.</summary>
    public static string FormatExact(Length length) => length.IsWholeSixtyFourths
        ? Format(length, DisplayUnit.Inch)
        : string.Create(CultureInfo.InvariantCulture, $"{length.Millimetres:0.######} mm");

    /// <summary>Whether a text is a rough thickness in quarters of an inch as the hardwood trade writes it: <c>4/4</c>, <c>5/4</c>, <c>8/4</c>.</summary>
    public static bool IsQuarters(string text) => LengthReading.IsQuarters(text);

    /// <summary>Reads a length whose bare numbers may be in any unit, for instance in centimetres.</summary>
    internal static bool TryParseIn(
        string? text, LengthUnit bareUnit, bool zeroAllowed, out Length length, [NotNullWhen(false)] out string? error)
    {
        length = default;
        return LengthReading.TryRead(text, bareUnit, out var reading, out error)
            && TryTicks(reading, text!, zeroAllowed, out length, out error);
    }

    /// <summary>The number alone, without its unit: <c>36 1/2</c>, <c>915</c>; marked with <c>~</c> if rounded.</summary>
    internal static string Number(Length length, DisplayUnit unit, int finestInch = FinestInch)
    {
        var magnitude = Math.Abs(length.Ticks);
        var step = unit == DisplayUnit.Inch ? Length.TicksPerInch / Fraction(finestInch) : Length.TicksPerMillimetre / 10;
        var steps = (magnitude + (step / 2)) / step;
        var mark = steps * step == magnitude ? "" : "~";
        var sign = length.Ticks < 0 ? "-" : "";
        var number = unit == DisplayUnit.Inch ? Inches(steps, finestInch) : Tenths(steps);
        return $"{mark}{sign}{number}";
    }

    /// <summary>A written text with plain quotation marks, hyphens and fractions, and single blanks.</summary>
    public static string Unified(string text) => LengthSigns.Plain(text);

    /// <summary>A written text in quotation marks, shortened and without control characters, for a message.</summary>
    public static string Quote(string text)
    {
        var shown = text.Length <= 40 ? text : $"{text[..40]}...";
        return $"'{string.Concat(shown.Select(sign => char.IsControl(sign) ? ' ' : sign))}'";
    }

    private static bool TryTicks(
        LengthReading reading, string text, bool zeroAllowed, out Length length, [NotNullWhen(false)] out string? error)
    {
        length = default;
        error = null;
        var (whole, rest) = (BigInteger.Divide(reading.Ticks, reading.Divisor), reading.Ticks % reading.Divisor);
        if (whole > Length.MaxTicks || (whole == Length.MaxTicks && !rest.IsZero))
        {
            error = $"{Quote(text)} is longer than 100 m, the longest size that is kept.";
        }
        else if (!rest.IsZero)
        {
            error = $"{Quote(text)} is not exact in 64ths of an inch or tenths of a millimetre. Write {Nearest(reading)} if that is meant.";
        }
        else if (whole.IsZero && !zeroAllowed)
        {
            error = $"{Quote(text)} is zero: give a length above zero.";
        }
        else
        {
            length = Length.FromTicks((long)whole);
        }

        return error is null;
    }

    private static string Nearest(LengthReading reading)
    {
        var step = reading.IsMetric ? Length.TicksPerMillimetre / 10 : Length.TicksPerSixtyFourth;
        var steps = ((2 * reading.Ticks) + (reading.Divisor * step)) / (2 * reading.Divisor * step);
        var nearest = Length.FromTicks(Math.Max(1, (long)steps) * step);
        return Format(nearest, reading.IsMetric ? DisplayUnit.Millimetre : DisplayUnit.Inch);
    }

    private static int Fraction(int finestInch) => finestInch is > 0 and <= FinestInch && int.IsPow2(finestInch)
        ? finestInch
        : throw new ArgumentOutOfRangeException(nameof(finestInch), finestInch, "Give 1, 2, 4, 8, 16, 32 or 64.");

    private static string Inches(long steps, int denominator)
    {
        var (whole, numerator) = Math.DivRem(steps, denominator);
        while (numerator != 0 && numerator % 2 == 0)
        {
            (numerator, denominator) = (numerator / 2, denominator / 2);
        }

        return (whole, numerator) switch
        {
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{whole}"),
            (0, _) => string.Create(CultureInfo.InvariantCulture, $"{numerator}/{denominator}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{whole} {numerator}/{denominator}"),
        };
    }

    private static string Tenths(long tenths) => string.Create(CultureInfo.InvariantCulture, $"{tenths / 10m:0.#}");
}
