namespace Offcuts.Domain;

/// <summary>An area in square ticks (a tick is 3.125 micrometres); exact, never negative for a real piece.</summary>
public readonly record struct Area : IComparable<Area>
{
    private Area(long squareTicks) => SquareTicks = squareTicks;

    /// <summary>The area in square ticks.</summary>
    public long SquareTicks { get; }

    /// <summary>The area in square millimetres, exactly.</summary>
    public decimal SquareMillimetres => SquareTicks / ((decimal)Length.TicksPerMillimetre * Length.TicksPerMillimetre);

    /// <summary>An area of so many square ticks.</summary>
    public static Area FromSquareTicks(long squareTicks) => new(squareTicks);

    /// <inheritdoc/>
    public int CompareTo(Area other) => SquareTicks.CompareTo(other.SquareTicks);

    /// <summary>Sum.</summary>
    public static Area operator +(Area a, Area b) => new(a.SquareTicks + b.SquareTicks);

    /// <summary>Difference.</summary>
    public static Area operator -(Area a, Area b) => new(a.SquareTicks - b.SquareTicks);

    /// <summary>Less than.</summary>
    public static bool operator <(Area a, Area b) => a.SquareTicks < b.SquareTicks;

    /// <summary>Greater than.</summary>
    public static bool operator >(Area a, Area b) => a.SquareTicks > b.SquareTicks;

    /// <summary>Less than or equal.</summary>
    public static bool operator <=(Area a, Area b) => a.SquareTicks <= b.SquareTicks;

    /// <summary>Greater than or equal.</summary>
    public static bool operator >=(Area a, Area b) => a.SquareTicks >= b.SquareTicks;
}
