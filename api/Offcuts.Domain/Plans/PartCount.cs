namespace Offcuts.Domain;

/// <summary>How many pieces of a part the plan makes where the design leaves it open.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Count">Pieces, without the spares.</param>
/// <param name="Spares">Spare blanks.</param>
/// <param name="Gaps">The gaps between the pieces; null if the design does not space them, or if pieces are missing.</param>
public sealed record PartCount(string Part, int Count, int Spares, EqualGaps? Gaps);

/// <summary>Equal gaps between pieces side by side: exactly <paramref name="Total"/> / <paramref name="Number"/> each.</summary>
/// <param name="Total">The span less the widths of all pieces.</param>
/// <param name="Number">How many gaps.</param>
public sealed record EqualGaps(Length Total, int Number)
{
    /// <summary>One gap as a maker reads it: to the nearest 1/64 in, or 0.1 mm.</summary>
    public Length Nearest(DisplayUnit unit)
    {
        var step = unit == DisplayUnit.Inch ? Length.TicksPerInch / 64 : Length.TicksPerMillimetre / 10;
        var steps = ((2 * Total.Ticks) + (Number * step)) / (2 * Number * step);
        return Length.FromTicks(steps * step);
    }

    /// <summary>Whether the nearest is exactly the gap.</summary>
    public bool IsExact(DisplayUnit unit) => Nearest(unit).Ticks * Number == Total.Ticks;
}
