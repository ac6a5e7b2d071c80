using System.Numerics;

namespace Offcuts.Domain;

/// <summary>A number without rounding: a ratio of whole numbers in lowest terms. The default value is zero.</summary>
public readonly record struct Ratio : IComparable<Ratio>
{
    // One less than the denominator, so that the default value is 0/1.
    private readonly BigInteger under;

    private Ratio(BigInteger numerator, BigInteger denominator) => (Numerator, under) = (numerator, denominator - 1);

    /// <summary>The numerator, which has the sign.</summary>
    public BigInteger Numerator { get; }

    /// <summary>The denominator, above zero.</summary>
    public BigInteger Denominator => under + 1;

    /// <summary>Whether it is a whole number.</summary>
    public bool IsWhole => under.IsZero;

    /// <summary>A ratio, reduced.</summary>
    /// <exception cref="DivideByZeroException">The denominator is zero.</exception>
    public static Ratio Of(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
        {
            throw new DivideByZeroException();
        }

        var common = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        return new(numerator / common, denominator / common);
    }

    /// <summary>A whole number.</summary>
    public static Ratio Of(long whole) => new(whole, 1);

    /// <summary>The greatest whole number that is not above it.</summary>
    public BigInteger Floor() => (Numerator - (((Numerator % Denominator) + Denominator) % Denominator)) / Denominator;

    /// <summary>The nearest whole number; of two as near, the greater.</summary>
    public BigInteger Nearest() => (this + Of(1, 2)).Floor();

    /// <inheritdoc/>
    public int CompareTo(Ratio other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <summary>Sum.</summary>
    public static Ratio operator +(Ratio a, Ratio b) => Of((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    /// <summary>Difference.</summary>
    public static Ratio operator -(Ratio a, Ratio b) => a + -b;

    /// <summary>The same below zero.</summary>
    public static Ratio operator -(Ratio a) => new(-a.Numerator, a.Denominator);

    /// <summary>Product.</summary>
    public static Ratio operator *(Ratio a, Ratio b) => Of(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    /// <summary>Quotient.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero.</exception>
    public static Ratio operator /(Ratio a, Ratio b) => Of(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    /// <summary>Less than.</summary>
    public static bool operator <(Ratio a, Ratio b) => a.CompareTo(b) < 0;

    /// <summary>Greater than.</summary>
    public static bool operator >(Ratio a, Ratio b) => a.CompareTo(b) > 0;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Ratio a, Ratio b) => a.CompareTo(b) <= 0;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Ratio a, Ratio b) => a.CompareTo(b) >= 0;

    /// <summary>As a fraction, <c>-7/2</c>, for messages.</summary>
    public override string ToString() => IsWhole ? $"{Numerator}" : $"{Numerator}/{Denominator}";
}
