using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Drawing;

/// <summary>What is cut: pieces, the blade's way and defects, each exactly as large as in the plan.</summary>
internal static class Wood
{
    /// <summary>Below this height of a strip its dashes would only be in the way.</summary>
    public const decimal LeastHeightForGlue = 20;

    /// <summary>A piece; the edges of a strip that will be glued are dashed.</summary>
    public static IEnumerable<XElement> Piece(BoardView view, KeyedPiece piece, int boardNumber)
    {
        var box = view.Of(piece.Piece.At);
        var (cssClass, fill) = piece.Piece switch
        {
            PartPiece => ("part", null),
            StripPiece => ("strip", null),
            LeftoverPiece => ("keep", DiagramStyle.Fill("keep", boardNumber)),
            _ => ("waste", DiagramStyle.Fill("waste", boardNumber)),
        };
        var key = piece.Key.Length == 0 ? null : new XAttribute("data-key", piece.Key);
        yield return Shapes.Rect(box, cssClass, key, fill, Shapes.Title($"{piece.Key} {piece.Name}, {piece.Cut}".TrimStart()));
        if (piece.Piece is StripPiece && box.Height > LeastHeightForGlue)
        {
            yield return Shapes.Line(box.X + 2, box.Y + 2.2m, box.Right - 2, box.Y + 2.2m, "glue");
            yield return Shapes.Line(box.X + 2, box.Bottom - 2.2m, box.Right - 2, box.Bottom - 2.2m, "glue");
        }
    }

    /// <summary>The wood that a cut turns to dust.</summary>
    public static XElement Kerf(BoardView view, SawCut cut) => Shapes.Rect(
        view.Of(cut.Kerf), "kerf", Shapes.Title(FormattableString.Invariant($"cut {cut.Order}")));

    /// <summary>A defect: a dashed rectangle crossed out.</summary>
    public static XElement Defect(BoardView view, Defect defect, DisplayUnit unit)
    {
        var box = view.Of(defect.Area);
        return new XElement(
            Shapes.Svg + "g",
            Shapes.Rect(box, "defect", Shapes.Title(DefectText.Format(defect, unit))),
            Shapes.Line(box.X, box.Y, box.Right, box.Bottom, "cross"),
            Shapes.Line(box.X, box.Bottom, box.Right, box.Y, "cross"));
    }
}
