namespace Offcuts.Domain;

/// <summary>
/// Sizes that no board has: mostly a slip in the order of the numbers, or a missing mark. The limits are common practice with room:
/// the thickest lumber sold is 16/4, the widest slabs hardly reach 48 in, and no sheet is thicker than a core door.
/// </summary>
public static class BoardShape
{
    /// <summary>Widest board of solid wood, 48 in.</summary>
    public static Length WidestSolid { get; } = Length.FromInches(48);

    /// <summary>Thickest board of solid wood, 12 in.</summary>
    public static Length ThickestSolid { get; } = Length.FromInches(12);

    /// <summary>Thickest sheet, 4 in.</summary>
    public static Length ThickestSheet { get; } = Length.FromInches(4);

    /// <summary>What is wrong with the thickness and how to mend it; null if nothing is.</summary>
    public static string? ThicknessFault(BoardKind kind, Dimensions size)
    {
        var shown = LengthText.FormatExact(size.Thickness);
        var most = kind == BoardKind.Sheet ? ThickestSheet : ThickestSolid;
        return kind == BoardKind.Solid && size.Thickness > Length.Min(size.Width, size.Length)
            ? $"It would be {shown} thick, more than it is wide or long. A size is thickness x width x length; did you mean {Sorted(size)}?"
            : size.Thickness > most
            ? $"It would be {shown} thick: {Name(kind)} is at most {LengthText.FormatExact(most)} thick here. A size is thickness x width x length; check the order and the units."
            : null;
    }

    /// <summary>What is wrong with the width and how to mend it; null if nothing is.</summary>
    public static string? WidthFault(BoardKind kind, Dimensions size) => kind == BoardKind.Solid && size.Width > WidestSolid
        ? $"It would be {LengthText.FormatExact(size.Width)} wide: {Name(kind)} is at most {LengthText.FormatExact(WidestSolid)} wide here. "
            + "A size is thickness x width x length; check the order and the units."
        : null;

    private static string Name(BoardKind kind) => kind == BoardKind.Sheet ? "a sheet" : "solid wood";

    private static string Sorted(Dimensions size)
    {
        Length[] sides = [size.Thickness, size.Width, size.Length];
        Array.Sort(sides);
        var sorted = new Dimensions(sides[0], sides[1], sides[2]);
        return sides.All(side => side.IsWholeSixtyFourths)
            ? SizeText.Format(sorted, DisplayUnit.Inch)
            : SizeText.FormatExact(sorted);
    }
}
