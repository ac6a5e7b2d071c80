using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Domain;

namespace Offcuts.Documents.Tables;

/// <summary>Sizes in a table: decimal numbers, because a spreadsheet takes 3/4 for a day in March.</summary>
internal static partial class TableNumber
{
    /// <summary>The unit in which a board's sizes are written: the shop's if all are exact there, else the other.</summary>
    public static DisplayUnit UnitOf(Board board, DisplayUnit shop)
    {
        Length[] sides = [board.Size.Thickness, board.Size.Width, board.Size.Length];
        return shop == DisplayUnit.Inch && sides.All(side => side.IsWholeSixtyFourths) ? DisplayUnit.Inch : DisplayUnit.Millimetre;
    }

    /// <summary>A size, marked with <c>~</c> if it was estimated.</summary>
    public static string Write(Length length, bool isEstimated, DisplayUnit unit) =>
        (isEstimated ? "~" : "") + (unit == DisplayUnit.Inch ? length.Inches : length.Millimetres).ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>A decimal number with a comma; any other text as it is.</summary>
    public static string WithComma(string cell) => Decimal().IsMatch(cell) ? cell.Replace('.', ',') : cell;

    /// <summary>A decimal number with a point, where it has a comma; any other text as it is.</summary>
    public static string WithPoint(string cell) => DecimalComma().IsMatch(cell) ? cell.Replace(',', '.') : cell;

    [GeneratedRegex(@"^~?[0-9]+\.[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Decimal();

    [GeneratedRegex(@"^~? *[0-9]*,[0-9]+ *(?:in|mm|cm|m)?$", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();
}
