using System.Globalization;
using System.Numerics;

namespace Offcuts.Domain;

/// <summary>What a formula's value measures.</summary>
public enum FormulaKind
{
    /// <summary>A number that was written without a unit: a length in the document's unit where a length is needed, else a plain number.</summary>
    Bare,

    /// <summary>A plain number: a count, or one length in parts of another.</summary>
    Number,

    /// <summary>A length, in ticks.</summary>
    Length,
}

/// <summary>A value in a formula, exact.</summary>
/// <param name="Amount">How much: ticks of a length, else the number itself.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="HasFraction">Whether it comes of a number written with a fraction bar, which needs a unit where bare numbers are metric.</param>
public readonly record struct FormulaValue(Ratio Amount, FormulaKind Kind, bool HasFraction = false)
{
    /// <summary>A length.</summary>
    public static FormulaValue Of(Length length) => new(Ratio.Of(length.Ticks), FormulaKind.Length);

    /// <summary>A count.</summary>
    public static FormulaValue Of(int count) => new(Ratio.Of(count), FormulaKind.Number);

    /// <summary>As a person would write it: <c>13 1/2"</c> or <c>7/2</c>; a length that is not whole ticks is rounded to the nearest.</summary>
    public string Shown(DisplayUnit unit) => Kind == FormulaKind.Length && Amount.Nearest() is var ticks && BigInteger.Abs(ticks) < long.MaxValue / 1000
        ? LengthText.Format(Length.FromTicks((long)ticks), unit)
        : string.Create(CultureInfo.InvariantCulture, $"{Amount}");
}
