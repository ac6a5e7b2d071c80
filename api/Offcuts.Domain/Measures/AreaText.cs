using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Areas in words, in both units at once: they are read rarely, and by people of either.</summary>
public static class AreaText
{
    private const decimal SquareTicksPerSquareInch = (decimal)Length.TicksPerInch * Length.TicksPerInch;

    /// <summary>For instance <c>1.5 sq in (9.7 cm2)</c>; to a tenth, and never 0 for what is not nothing.</summary>
    public static string Format(Area area) => string.Create(
        CultureInfo.InvariantCulture, $"{Tenths(area.SquareTicks / SquareTicksPerSquareInch)} sq in ({Tenths(area.SquareMillimetres / 100)} cm2)");

    private static string Tenths(decimal value) => value is > 0 and < 0.1m ? "under 0.1" : value.ToString("0.#", CultureInfo.InvariantCulture);
}
