namespace Offcuts.Domain;

/// <summary>Wood to buy in the words of the counter.</summary>
public static class YardText
{
    private static readonly long Quarter = Length.FromInches(0, 1, 4).Ticks;
    private static readonly long Foot = Length.FromInches(12).Ticks;

    /// <summary>A thickness: in quarters (<c>4/4</c>) for rough solid wood of a usual rough thickness, else as it is.</summary>
    public static string Thickness(BoardKind kind, Surface surface, Length thickness, DisplayUnit unit) =>
        (kind, surface) == (BoardKind.Solid, Surface.Rough) && NominalSizes.Surfaced(thickness) is not null && thickness.Ticks % Quarter == 0
            ? FormattableString.Invariant($"{thickness.Ticks / Quarter}/4")
            : LengthText.Format(thickness, unit);

    /// <summary>The width and length to look for: <c>5" wide, 8 ft long</c>.</summary>
    /// <param name="width">Width.</param>
    /// <param name="length">Length; whole feet are told in feet in a shop that works in inches.</param>
    /// <param name="isRandom">Whether the yard sells random widths and lengths, so that larger pieces do too.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Face(Length width, Length length, bool isRandom, DisplayUnit unit)
    {
        var along = unit == DisplayUnit.Inch && length.Ticks % Foot == 0
            ? FormattableString.Invariant($"{length.Ticks / Foot} ft")
            : LengthText.Format(length, unit);
        return isRandom
            ? $"at least {LengthText.Format(width, unit)} wide and {along} long"
            : $"{LengthText.Format(width, unit)} wide, {along} long";
    }
}
