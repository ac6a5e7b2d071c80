namespace Offcuts.Domain;

/// <summary>What lumber really measures that is sold under a nominal size.</summary>
/// <remarks>
/// Softwood: the American Softwood Lumber Standard PS 20, dry. Hardwood: the grading rules of the National Hardwood Lumber
/// Association. Both tables with their sources are in <c>db/reference</c>. They are minimum sizes: measure what is there.
/// </remarks>
public static class NominalSizes
{
    private static readonly Length BoardsEnd = Length.FromInches(2);

    private static readonly Dictionary<Length, Length> Thicknesses = Dressed("thickness");

    private static readonly Dictionary<Length, Length> Widths = Dressed("width");

    private static readonly Dictionary<Length, Length> Quarters = ReferenceTable.Read("hardwood-thicknesses.csv")
        .ToDictionary(row => Inches(row["rough"]), row => Inches(row["surfaced"]));

    /// <summary>The dressed size of dry softwood by its nominal size: <c>2x4</c> is 1 1/2 x 3 1/2 in.</summary>
    /// <param name="nominal">Thickness and width in inches with an x between: <c>2x4</c>, <c>1 1/4x6</c>.</param>
    /// <param name="thickness">Dressed thickness; zero if there is no such size.</param>
    /// <param name="width">Dressed width; zero if there is no such size.</param>
    /// <returns>Whether the standard has such a size.</returns>
    public static bool TryDressed(string nominal, out Length thickness, out Length width)
    {
        (thickness, width) = default((Length, Length));
        if (LengthSigns.Plain(nominal).ToLowerInvariant().Split('x') is not [var first, var second]
            || !LengthText.TryParse(first, DisplayUnit.Inch, out var nominalThickness, out _)
            || !LengthText.TryParse(second, DisplayUnit.Inch, out var nominalWidth, out _)
            || !Thicknesses.TryGetValue(nominalThickness, out var dressedThickness)
            || !Widths.TryGetValue(nominalWidth, out var dressedWidth)
            || (IsForBoardsOnly(nominalWidth) && nominalThickness >= BoardsEnd))
        {
            return false;
        }

        (thickness, width) = (dressedThickness, dressedWidth);
        return true;
    }

    /// <summary>The thickness of rough hardwood once both faces are surfaced: 13/16 in for 4/4; null if it is no usual rough thickness.</summary>
    /// <param name="rough">The rough thickness: 1 in for 4/4.</param>
    public static Length? Surfaced(Length rough) => Quarters.TryGetValue(rough, out var surfaced) ? surfaced : null;

    /// <summary>What is wrong with a rough thickness in quarters on planed stock, which is thinner than that; null if nothing is.</summary>
    /// <param name="written">The thickness as it was written.</param>
    /// <param name="surface">How far the wood is milled.</param>
    public static string? QuartersFault(string written, Surface surface)
    {
        if (surface == Surface.Rough || !LengthText.IsQuarters(written) || !LengthText.TryParse(written, DisplayUnit.Inch, out var rough, out _))
        {
            return null;
        }

        var usual = surface == Surface.Surfaced && Surfaced(rough) is { } thin ? $", usually {LengthText.Format(thin, DisplayUnit.Inch)}" : "";
        return $"{written} is a rough thickness: measure the {(surface == Surface.Surfaced ? "surfaced" : "skip-planed")} wood and write that{usual}.";
    }

    private static bool IsForBoardsOnly(Length nominalWidth) =>
        nominalWidth == Length.FromInches(7) || nominalWidth == Length.FromInches(9) || nominalWidth == Length.FromInches(11);

    private static Dictionary<Length, Length> Dressed(string dimension) => ReferenceTable.Read("softwood-sizes.csv")
        .Where(row => row["dimension"] == dimension)
        .ToDictionary(row => Inches(row["nominal"]), row => Inches(row["dry"]));

    private static Length Inches(string text) => LengthText.Parse(text, DisplayUnit.Inch);
}
