using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>
/// Defects as makers write them: what, where along the board, and where across it unless it takes the whole width:
/// <c>split 0..4in</c>, <c>knot 10..12 x 1..2</c>, or so far from an end: <c>split 4in at the right end</c>. Measured from the board's left end
/// and lower edge.
/// </summary>
public static partial class DefectText
{
    private const string HowToWrite = "Write what it is and where it lies, for instance split 0..4in, split 4in at the right end, or knot 10..12in x 1..2in.";

    /// <summary>Reads a defect; never throws. That it lies on the board is for <see cref="BoardRules"/> to check.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="board">The board's size, for a defect that takes its whole width or is measured from its right end.</param>
    /// <param name="bareUnit">The unit where none is written.</param>
    /// <param name="defect">The defect; null if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(
        string? text, Dimensions board, DisplayUnit bareUnit,
        [NotNullWhen(true)] out Defect? defect, [NotNullWhen(false)] out string? error)
    {
        defect = null;
        if (AtEnd().Match(LengthSigns.Plain(text ?? "")) is { Success: true } end)
        {
            if (!LengthText.TryParse(end.Groups["reach"].Value, bareUnit, out var reach, out error))
            {
                return false;
            }

            var start = end.Groups["end"].Value.StartsWith('r') || end.Groups["end"].Value.StartsWith('R') ? board.Length - reach : Length.Zero;
            defect = new Defect(end.Groups["kind"].Value, new Rect(start, Length.Zero, reach, board.Width));
            return true;
        }

        if (Written().Match(LengthSigns.Plain(text ?? "")) is not { Success: true } match)
        {
            error = $"{LengthText.Quote(text ?? "")} is not a defect. {HowToWrite}";
            return false;
        }

        var (along, across) = (match.Groups["along"].Value, match.Groups["across"]);
        var (alongUnit, acrossUnit) = (RangeText.UnitIn(along), RangeText.UnitIn(across.Value));
        var (y, top) = (Length.Zero, board.Width);
        if (!RangeText.TryParseIn(along, Unit(alongUnit, acrossUnit, bareUnit), fromZero: true, out var x, out var right, out error)
            || (across.Success
                && !RangeText.TryParseIn(across.Value, Unit(acrossUnit, alongUnit, bareUnit), fromZero: true, out y, out top, out error)))
        {
            return false;
        }

        defect = new Defect(match.Groups["kind"].Value, new Rect(x, y, right - x, top - y));
        return true;
    }

    /// <summary>Prints a defect: <c>knot 10" to 12" along, 1" to 2" across</c>.</summary>
    public static string Format(Defect defect, DisplayUnit unit) =>
        $"{defect.Kind} {LengthText.Format(defect.Area.X, unit)} to {LengthText.Format(defect.Area.Right, unit)} along, "
        + $"{LengthText.Format(defect.Area.Y, unit)} to {LengthText.Format(defect.Area.Top, unit)} across";

    /// <summary>Prints a defect without loss; what it prints can be read again: <c>knot 10"..12" x 1"..2"</c>.</summary>
    public static string FormatExact(Defect defect)
    {
        return $"{defect.Kind} {Range(defect.Area.X, defect.Area.Right)} x {Range(defect.Area.Y, defect.Area.Top)}";

        static string Range(Length from, Length to) => $"{LengthText.FormatExact(from)}..{LengthText.FormatExact(to)}";
    }

    private static LengthUnit Unit(LengthUnit? own, LengthUnit? other, DisplayUnit bareUnit) =>
        own ?? (other is { } beside ? LengthUnits.Beside(beside) : bareUnit.ToLengthUnit());

    [GeneratedRegex(@"^(?<kind>\p{L}[^0-9]*?) +(?<along>[0-9.][^xX]*?) *(?:[xX] *(?<across>[0-9.].*))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Written();

    [GeneratedRegex(@"^(?<kind>\p{L}[^0-9]*?) +(?<reach>[0-9.].*?) *(?:(?:at|from) +)?(?:the +)?(?<end>left|right) +end$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex AtEnd();
}
