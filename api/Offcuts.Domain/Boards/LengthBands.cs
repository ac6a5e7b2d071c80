namespace Offcuts.Domain;

/// <summary>Bands of length as racks are sorted by: from one foot to eight, or from 300 mm to 2400 (common practice, in the shop's unit).</summary>
public static class LengthBands
{
    private static readonly Length[] Inches = [.. new[] { 12, 24, 36, 48, 72, 96 }.Select(inches => Length.FromInches(inches))];
    private static readonly Length[] Millimetres = [.. new[] { 300m, 600, 900, 1200, 1800, 2400 }.Select(Length.FromMillimetres)];

    /// <summary>The band that a length lies in: from one edge to just below the other; null for none.</summary>
    public static (Length? Below, Length? Above) Around(Length length, DisplayUnit unit)
    {
        var edges = unit == DisplayUnit.Inch ? Inches : Millimetres;
        var passed = edges.Count(edge => edge <= length);
        return (passed == 0 ? null : edges[passed - 1], passed == edges.Length ? null : edges[passed]);
    }

    /// <summary>A band in words: <c>under 12"</c>, <c>12" to 24"</c>, <c>8 ft</c> and more.</summary>
    internal static string Name(Length? below, Length? above, DisplayUnit unit) => (below, above) switch
    {
        (null, { } most) => $"under {LengthText.Format(most, unit)}",
        ({ } least, { } most) => $"{LengthText.Format(least, unit)} to {LengthText.Format(most, unit)}",
        ({ } least, null) => $"{LengthText.Format(least, unit)} and more",
        (null, null) => "any length",
    };
}
