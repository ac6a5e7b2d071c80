using System.Globalization;

namespace Offcuts.Domain;

/// <summary>
/// A length, exact both in 64ths of an inch and in tenths of a millimetre.
/// </summary>
/// <remarks>
/// Counts ticks of 3.125 micrometres (1/8128 inch) in a 64-bit integer: 1/64 inch is exactly 127 ticks and
/// 0.1 mm exactly 32, because 1 inch is exactly 25.4 mm (international yard and pound agreement, 1959).
/// The default value is zero. A difference may be negative; a size never is. Arithmetic that overflows throws.
/// </remarks>
public readonly record struct Length : IComparable<Length>
{
    /// <summary>Ticks in one inch.</summary>
    public const long TicksPerInch = 8128;

    /// <summary>Ticks in 1/64 inch.</summary>
    public const long TicksPerSixtyFourth = 127;

    /// <summary>Ticks in one millimetre.</summary>
    public const long TicksPerMillimetre = 320;

    /// <summary>The longest size that anything in the product may have: 100 m, in ticks.</summary>
    public const long MaxTicks = 100_000 * TicksPerMillimetre;

    private Length(long ticks) => Ticks = ticks;

    /// <summary>The length in ticks of 3.125 micrometres.</summary>
    public long Ticks { get; }

    /// <summary>No length.</summary>
    public static Length Zero => default;

    /// <summary>The longest size allowed, 100 m.</summary>
    public static Length Max => new(MaxTicks);

    /// <summary>The exact value in millimetres; never more than six decimals.</summary>
    public decimal Millimetres => (decimal)Ticks / TicksPerMillimetre;

    /// <summary>The value in inches, rounded to 28 significant digits where it is not a binary fraction of an inch.</summary>
    public decimal Inches => (decimal)Ticks / TicksPerInch;

    /// <summary>Whether the length is a whole number of 64ths of an inch.</summary>
    public bool IsWholeSixtyFourths => Ticks % TicksPerSixtyFourth == 0;

    /// <summary>Whether the length is a whole number of tenths of a millimetre.</summary>
    public bool IsWholeTenths => Ticks % (TicksPerMillimetre / 10) == 0;

    /// <summary>A length of so many ticks of 3.125 micrometres.</summary>
    public static Length FromTicks(long ticks) => new(ticks);

    /// <summary>A length of so many 64ths of an inch.</summary>
    public static Length FromSixtyFourths(long sixtyFourths) => new(sixtyFourths * TicksPerSixtyFourth);

    /// <summary>A length of whole inches and a fraction, for instance <c>FromInches(36, 1, 2)</c> for 36 1/2 in.</summary>
    /// <exception cref="ArgumentException">The denominator does not divide 64, so the value is not exact.</exception>
    public static Length FromInches(long whole, long numerator = 0, long denominator = 1)
    {
        if (denominator <= 0 || 64 % denominator != 0)
        {
            throw new ArgumentException("The denominator must be 1, 2, 4, 8, 16, 32 or 64.", nameof(denominator));
        }

        return FromSixtyFourths((whole * 64) + (numerator * (64 / denominator)));
    }

    /// <summary>A length in millimetres.</summary>
    /// <exception cref="ArgumentException">The value is not a whole number of ticks of 0.003125 mm.</exception>
    public static Length FromMillimetres(decimal millimetres) =>
        TryFromMillimetres(millimetres, out var length)
            ? length
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{millimetres} mm is not a multiple of 0.003125 mm."),
                nameof(millimetres));

    /// <summary>A length in millimetres, if the value is a whole number of ticks of 0.003125 mm and at most 100 m either way.</summary>
    public static bool TryFromMillimetres(decimal millimetres, out Length length)
    {
        length = default;
        if (Math.Abs(millimetres) > (decimal)MaxTicks / TicksPerMillimetre)
        {
            return false;
        }

        var ticks = millimetres * TicksPerMillimetre;
        if (ticks != decimal.Truncate(ticks))
        {
            return false;
        }

        length = new Length((long)ticks);
        return true;
    }

    /// <inheritdoc/>
    public int CompareTo(Length other) => Ticks.CompareTo(other.Ticks);

    /// <summary>The smaller of two lengths.</summary>
    public static Length Min(Length a, Length b) => a <= b ? a : b;

    /// <summary>The larger of two lengths.</summary>
    public static Length Larger(Length a, Length b) => a >= b ? a : b;

    /// <summary>Sum.</summary>
    public static Length operator +(Length a, Length b) => new(a.Ticks + b.Ticks);

    /// <summary>Difference; may be negative.</summary>
    public static Length operator -(Length a, Length b) => new(a.Ticks - b.Ticks);

    /// <summary>So many times the length.</summary>
    public static Length operator *(Length a, long times) => new(a.Ticks * times);

    /// <summary>Area of a rectangle.</summary>
    public static Area operator *(Length a, Length b) => Area.FromSquareTicks(a.Ticks * b.Ticks);

    /// <summary>Less than.</summary>
    public static bool operator <(Length a, Length b) => a.Ticks < b.Ticks;

    /// <summary>Greater than.</summary>
    public static bool operator >(Length a, Length b) => a.Ticks > b.Ticks;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Length a, Length b) => a.Ticks <= b.Ticks;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Length a, Length b) => a.Ticks >= b.Ticks;

    /// <summary>The exact value in millimetres with its unit, for logs and test messages.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millimetres:0.######} mm");
}
