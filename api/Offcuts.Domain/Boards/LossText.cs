namespace Offcuts.Domain;

/// <summary>What a blank loses to its board's warp, in words.</summary>
public static class LossText
{
    private static readonly long SixtyFourth = Length.TicksPerInch / 64;
    private static readonly long TenthOfMillimetre = Length.FromMillimetres(0.1m).Ticks;

    /// <summary>
    /// <c>flatten: 9/64" counted for bow and cup; sawn 1/32" wider for crook</c>, rounded up to what a maker measures; empty if nothing is lost.
    /// </summary>
    /// <param name="loss">What is lost; null for nothing.</param>
    /// <param name="unit">The shop's unit.</param>
    /// <param name="warp">The board's warp, to name what bends it; null where it is not known.</param>
    public static string Of(Loss? loss, DisplayUnit unit, Warp? warp = null)
    {
        if (loss is null)
        {
            return "";
        }

        var flatten = loss.Thickness > Length.Zero ? $"flatten: {LengthText.Format(Up(loss.Thickness, unit), unit)} counted for {Faces(warp)}" : "";
        var straighten = loss.Width > Length.Zero ? $"sawn {LengthText.Format(Up(loss.Width, unit), unit)} wider for crook" : "";
        return string.Join("; ", new[] { flatten, straighten }.Where(said => said.Length > 0));
    }

    private static string Faces(Warp? warp)
    {
        (string Name, Length Size)[] all = [("bow", warp?.Bow ?? default), ("cup", warp?.Cup ?? default), ("twist", warp?.Twist ?? default)];
        var named = all.Where(each => each.Size > Length.Zero).Select(each => each.Name).ToList();
        return named switch
        {
            [] => "warp",
            [var only] => only,
            [.. var first, var last] => $"{string.Join(", ", first)} and {last}",
        };
    }

    /// <summary>A length rounded up to the finest that is printed: a 64th of an inch or a tenth of a millimetre.</summary>
    internal static Length Up(Length length, DisplayUnit unit)
    {
        var step = unit == DisplayUnit.Inch ? SixtyFourth : TenthOfMillimetre;
        return Length.FromTicks((length.Ticks + step - 1) / step * step);
    }
}
