using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Drawing;

/// <summary>What stands around the board: heading, first cut, grain, overall sizes, and the key to what has no room on it.</summary>
internal sealed class Frame
{
    private const decimal KeyFont = 9.5m;
    private const decimal KeyLine = 14;
    private readonly List<XElement> elements = [];
    private readonly PlanDocument document;
    private readonly BoardCut board;
    private readonly BoardView view;
    private readonly IReadOnlyList<KeyedPiece> pieces;

    public Frame(PlanDocument document, BoardCut board, BoardView view, MarkLanes lanes, IReadOnlyList<KeyedPiece> inKey, IReadOnlyList<KeyedPiece> pieces)
    {
        (this.document, this.board, this.view, this.pieces) = (document, board, view, pieces);
        Heading = FormattableString.Invariant($"Board {board.Number}: {Words.Name(document, board)}");
        Top = -lanes.Above - 48;
        AddHeading();
        AddDimensions(view.Bottom + lanes.Below + 10);
        Bottom = AddKey(view.Bottom + lanes.Below + 32, inKey);
    }

    /// <summary>Number and name of the board.</summary>
    public string Heading { get; }

    /// <summary>Where the drawing begins.</summary>
    public decimal Top { get; }

    /// <summary>Where it ends.</summary>
    public decimal Bottom { get; }

    public IReadOnlyList<XElement> Elements => elements;

    private void AddHeading()
    {
        const decimal Room = BoardView.PageWidth - 230;
        var wood = $"{Words.Wood(document, board.Species, board.Kind, board.Surface)}, {SizeText.Format(board.Size, document.Unit)}";
        var place = document.Lies(document.Problem.Stock.FirstOrDefault(stock => stock.Id == board.BoardId));
        var size = Lettering.Width(Heading, 16, bold: true) <= Room ? 16m : 12m;
        elements.Add(Shapes.Text(2, Top + 17, size, "start", Lettering.Shorten(Heading, size, Room, bold: true), "strong"));
        elements.Add(Shapes.Text(
            2, Top + 34, 11, "start", Lettering.Shorten(place is null ? wood : $"{wood}; lies: {place}", 11, Room)));
        // By the first cut itself: a board planned to be ripped first may begin with a crosscut that clears a bad end.
        var first = board.Cuts.MinBy(each => each.Order) is not { } cut ? "No cut: use it whole"
            : cut.Direction == FirstCut.Rip ? "First: rip, along the grain" : "First: crosscut, across the grain";
        elements.Add(Shapes.Text(BoardView.PageWidth - 2, Top + 16, 12, "end", first, "strong"));
        AddGrain(BoardView.PageWidth - 3, Top + 30);
    }

    private void AddGrain(decimal right, decimal y)
    {
        const decimal Reach = 90;
        var left = right - Reach;
        elements.Add(Shapes.Text(left - 6, y + 4, 11, "end", board.Kind == BoardKind.Sheet ? "face grain" : "grain"));
        elements.Add(Shapes.Line(left + 6, y, right - 6, y, "grain"));
        elements.Add(Head(left, y, 8));
        elements.Add(Head(right, y, -8));
    }

    private static XElement Head(decimal x, decimal y, decimal back) => new(
        Shapes.Svg + "path", new XAttribute("class", "head"),
        new XAttribute("d", FormattableString.Invariant($"M{x:0.##} {y:0.##}l{back:0.##} -4v8z")));

    private void AddDimensions(decimal lengthY)
    {
        const decimal WidthX = BoardView.Left - 37;
        AddDimension(BoardView.Left, lengthY, view.Right, lengthY);
        var length = LengthText.Format(board.Size.Length, document.Unit);
        var middle = (BoardView.Left + view.Right) / 2;
        elements.Add(Shapes.Rect(Box.Around(middle, lengthY, Lettering.Width(length, 11) + 8, 12), "paper"));
        elements.Add(Shapes.Text(middle, lengthY + 4, 11, "middle", length));
        AddDimension(WidthX, 0, WidthX, view.Bottom);
        var width = LengthText.Format(board.Size.Width, document.Unit);
        var size = Lettering.Width(width, 11) <= WidthX - 8 ? 11m : 9m;
        elements.Add(Shapes.Text(WidthX - 5, (view.Bottom / 2) + 4, size, "end", width));
    }

    // A line with short strokes at its ends, as in hand-drawn shop drawings.
    private void AddDimension(decimal x1, decimal y1, decimal x2, decimal y2)
    {
        var (across, along) = y1 == y2 ? (0m, 5m) : (5m, 0m);
        elements.Add(Shapes.Line(x1, y1, x2, y2, "dimension"));
        elements.Add(Shapes.Line(x1 - across, y1 - along, x1 + across, y1 + along, "dimension"));
        elements.Add(Shapes.Line(x2 - across, y2 - along, x2 + across, y2 + along, "dimension"));
    }

    // Two columns where every entry fits into one, else one; names are broken into lines rather than cut off.
    private decimal AddKey(decimal top, IReadOnlyList<KeyedPiece> inKey)
    {
        const decimal HalfPage = (BoardView.PageWidth / 2) - 8;
        var defects = board.Defects.Select(defect => $"defect: {DefectText.Format(defect, document.Unit)}{Stays(defect)}");
        var entries = inKey.Select(Entry).Concat(defects).ToList();
        var columns = entries.All(entry => Lettering.Width(entry, KeyFont) < HalfPage) ? 2 : 1;
        var texts = columns == 2 ? entries : [.. entries.SelectMany(entry => Lettering.Wrap(entry, KeyFont, BoardView.PageWidth - 8))];
        var lines = (texts.Count + columns - 1) / columns;
        foreach (var (index, text) in texts.Index())
        {
            var (column, line) = Math.DivRem(index, Math.Max(1, lines));
            elements.Add(Shapes.Text(2 + (column * BoardView.PageWidth / 2), top + (line * KeyLine), KeyFont, "start", text));
        }

        return top - 8 + (lines * KeyLine);
    }

    private string Stays(Defect defect)
    {
        var holders = pieces.Where(piece => piece.Holds(defect)).Select(piece => piece.Key).ToList();
        return holders.Count == 0 ? "" : $"; stays in {string.Join(", ", holders)}";
    }

    // Sizes first, so that a long name cannot push them off the page.
    private static string Entry(KeyedPiece piece) =>
        $"{piece.Key}:  cut {piece.Cut}{(piece.Finished is null ? "" : $", {piece.Finished}")}:  {piece.Name}";
}
