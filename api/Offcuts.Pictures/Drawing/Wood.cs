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

    /// <summary>A defect, with its kind where there is room: a dashed rectangle, crossed out unless it stays in a piece.</summary>
    public static XElement Defect(BoardView view, Defect defect, bool stays, DisplayUnit unit)
    {
        const decimal FontSize = 8;
        var box = view.Of(defect.Area);
        var text = Box.Around(box.CentreX, box.CentreY, Lettering.Width(defect.Kind, FontSize) + 4, FontSize + 2);
        var fits = text.Width + 2 <= box.Width && text.Height + 2 <= box.Height;
        return new XElement(
            Shapes.Svg + "g",
            Shapes.Rect(box, stays ? "held" : "defect", Shapes.Title(DefectText.Format(defect, unit))),
            stays ? null : Shapes.Line(box.X, box.Y, box.Right, box.Bottom, "cross"),
            stays ? null : Shapes.Line(box.X, box.Bottom, box.Right, box.Y, "cross"),
            fits ? Shapes.Rect(text, "paper") : null,
            fits ? Shapes.Text(box.CentreX, box.CentreY + 3, FontSize, "middle", defect.Kind) : null);
    }
}
