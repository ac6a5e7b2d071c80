namespace Offcuts.Domain;

/// <summary>An amount of money in whole minor units (cents) of the shop's currency.</summary>
/// <param name="MinorUnits">Whole minor units; a price is never negative.</param>
public readonly record struct Money(long MinorUnits) : IComparable<Money>
{
    /// <summary>No money.</summary>
    public static Money Zero => default;

    /// <inheritdoc/>
    public int CompareTo(Money other) => MinorUnits.CompareTo(other.MinorUnits);

    /// <summary>Sum.</summary>
    public static Money operator +(Money a, Money b) => new(a.MinorUnits + b.MinorUnits);

    /// <summary>Difference.</summary>
    public static Money operator -(Money a, Money b) => new(a.MinorUnits - b.MinorUnits);

    /// <summary>So many times the amount.</summary>
    public static Money operator *(Money a, long times) => new(a.MinorUnits * times);

    /// <summary>Less than.</summary>
    public static bool operator <(Money a, Money b) => a.MinorUnits < b.MinorUnits;

    /// <summary>Greater than.</summary>
    public static bool operator >(Money a, Money b) => a.MinorUnits > b.MinorUnits;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Money a, Money b) => a.MinorUnits <= b.MinorUnits;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Money a, Money b) => a.MinorUnits >= b.MinorUnits;
}
