using System.Globalization;
using System.Xml.Linq;
using Offcuts.Domain;
using Offcuts.Pictures.Drawing;

namespace Offcuts.Pictures;

/// <summary>The cutting diagram of one board, to scale, for black-and-white print at A4 or Letter width.</summary>
public static class Diagram
{
    /// <summary>Draws a board of a plan as a Scalable Vector Graphics document.</summary>
    /// <param name="document">The plan and what it was made from.</param>
    /// <param name="boardNumber">The board's number in the plan.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.NotFound"/>: the plan cuts no board of that number.</exception>
    public static string Svg(PlanDocument document, int boardNumber)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Markup.Write(Element(document, document.Board(boardNumber), withKey: true));
    }

    /// <summary>The drawing as an element; without the key to its letters where a table beside it has them all.</summary>
    internal static XElement Element(PlanDocument document, BoardCut board, bool withKey)
    {
        var view = new BoardView(board);
        var pieces = KeyedPiece.Of(document, board);
        var labels = new PieceLabels(view, pieces, board.Defects.Select(defect => view.Of(defect.Area)));
        var cuts = new CutMarks(view, board, labels.Occupied);
        var lanes = new MarkLanes(view, [.. labels.Marks, .. cuts.Marks]);
        var frame = new Frame(document, board, view, lanes, withKey ? labels.InKey : [], pieces);
        return new XElement(
            Shapes.Svg + "svg",
            new XAttribute("class", "cut-diagram"), new XAttribute("role", "img"),
            new XAttribute("viewBox", string.Create(
                CultureInfo.InvariantCulture, $"0 {frame.Top:0.##} {BoardView.PageWidth:0} {frame.Bottom - frame.Top:0.##}")),
            Shapes.Title(frame.Heading),
            new XElement(Shapes.Svg + "desc", Describe(frame.Heading, pieces)),
            new XElement(Shapes.Svg + "style", DiagramStyle.Css),
            DiagramStyle.Patterns(board.Number),
            Shapes.Rect(view.Of(new Rect(Length.Zero, Length.Zero, board.Size.Length, board.Size.Width)), "board"),
            pieces.SelectMany(piece => Wood.Piece(view, piece, board.Number)),
            board.Cuts.Select(cut => Wood.Kerf(view, cut)),
            board.Defects.Select(defect => Wood.Defect(view, defect, pieces.Any(piece => piece.Holds(defect)), document.Unit)),
            labels.Elements, cuts.Elements, lanes.Elements, frame.Elements);
    }

    private static string Describe(string heading, IReadOnlyList<KeyedPiece> pieces) =>
        $"{heading}. Pieces: {string.Join("; ", pieces.Select(piece => $"{piece.Key} {piece.Name}, {piece.Cut}".TrimStart()))}.";
}
