namespace Offcuts.Domain;

/// <summary>Which defects stay in a piece, because its part or panel tolerates them, in words.</summary>
public static class StayingText
{
    /// <summary>
    /// <c>knot stays in it, 2" to 4" from its left end and 1" to 2" from its lower edge</c>, as it lies on its board; empty if none stays.
    /// </summary>
    /// <param name="piece">Where the piece lies on its board.</param>
    /// <param name="defects">The board's defects.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Of(Rect piece, IEnumerable<Defect> defects, DisplayUnit unit) =>
        string.Join("; ", defects.Where(defect => defect.Area.Overlaps(piece)).Select(defect => Of(piece, defect, unit)));

    private static string Of(Rect piece, Defect defect, DisplayUnit unit)
    {
        var along = Range(Length.Larger(defect.Area.X, piece.X) - piece.X, Length.Min(defect.Area.Right, piece.Right) - piece.X);
        var across = Range(Length.Larger(defect.Area.Y, piece.Y) - piece.Y, Length.Min(defect.Area.Top, piece.Top) - piece.Y);
        return $"{defect.Kind} stays in it, {along} from its left end and {across} from its lower edge";

        string Range(Length from, Length to) => $"{LengthText.Format(from, unit)} to {LengthText.Format(to, unit)}";
    }
}
