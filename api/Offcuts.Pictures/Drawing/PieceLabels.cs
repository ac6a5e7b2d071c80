using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Drawing;

/// <summary>Writes on every piece what it is, as much of it as fits; what does not fit goes to the key below the drawing.</summary>
internal sealed class PieceLabels
{
    // The smaller is 7 points at full page width: still read at arm's length.
    private static readonly decimal[] FontSizes = [11, 9.5m];

    private readonly List<XElement> elements = [];
    private readonly IReadOnlyList<Box> defects;
    private readonly List<Box> occupied;
    private readonly List<Mark> marks = [];
    private readonly List<KeyedPiece> inKey = [];
    private readonly BoardView view;

    public PieceLabels(BoardView view, IReadOnlyList<KeyedPiece> pieces, IEnumerable<Box> defects)
    {
        this.view = view;
        this.defects = [.. defects];
        occupied = [.. this.defects];
        foreach (var piece in pieces)
        {
            Label(piece, Room(piece, view.Of(piece.Piece.At)));
        }
    }

    /// <summary>The texts.</summary>
    public IReadOnlyList<XElement> Elements => elements;

    /// <summary>Where texts and defects are, for others to keep clear of.</summary>
    public IReadOnlyList<Box> Occupied => occupied;

    /// <summary>Letters that found no room on their pieces.</summary>
    public IReadOnlyList<Mark> Marks => marks;

    /// <summary>The pieces whose words are not all on them.</summary>
    public IReadOnlyList<KeyedPiece> InKey => inKey;

    // The dashed edges of a strip are no place for words.
    private static Box Room(KeyedPiece piece, Box box) =>
        piece.Piece is StripPiece && box.Height > Wood.LeastHeightForGlue ? box with { Y = box.Y + 3, Height = box.Height - 6 } : box;

    // All of a piece, then what is left of it beside each defect that stays in it, the larger first.
    private IReadOnlyList<Box> Rooms(Box box) => [box, .. defects.Where(box.Overlaps).SelectMany(defect => (Box[])
        [
            box with { Width = defect.X - box.X }, box with { X = defect.Right, Width = box.Right - defect.Right },
            box with { Height = defect.Y - box.Y }, box with { Y = defect.Bottom, Height = box.Bottom - defect.Bottom },
        ]).Where(room => room.Width > 0 && room.Height > 0).OrderByDescending(room => room.Width * room.Height)];

    private void Label(KeyedPiece piece, Box box)
    {
        if (piece.Piece is WastePiece)
        {
            _ = TryWrite(["waste"], box, 9, upwards: false, paper: true) || TryWrite(["waste"], box, 9, upwards: true, paper: true);
            return;
        }

        var rooms = Rooms(box);
        foreach (var upwards in (bool[])[false, true])
        {
            foreach (var fontSize in FontSizes)
            {
                if (rooms.Any(room => Wordings(piece).Any(lines => TryWrite(lines, room, fontSize, upwards, piece.Piece is LeftoverPiece))))
                {
                    return;
                }
            }
        }

        inKey.Add(piece);
        if (!rooms.Any(room => TryWithoutFinished(piece, room)) && !rooms.Any(room => TryShortened(piece, room))
            && !rooms.Any(room => TryName(piece, room)) && !rooms.Any(room => TrySign(piece, room)))
        {
            marks.Add(new Mark(piece.Key, MarkKind.Piece, box.CentreX, box.CentreY, box.CentreY < view.Bottom / 2 ? Side.Above : Side.Below));
        }
    }

    private static IEnumerable<string[]> Wordings(KeyedPiece piece)
    {
        var name = $"{piece.Key}  {piece.Name}";
        if (piece.Piece is LeftoverPiece)
        {
            return [[name, piece.Cut], [$"{name} {piece.Cut}"]];
        }

        var cut = $"cut {piece.Cut}";
        return piece.Finished is null
            ? [[name, cut], [$"{name},  {cut}"]]
            : [[name, cut, piece.Finished], [$"{name},  {cut}", piece.Finished], [name, $"{cut},  {piece.Finished}"], [$"{name},  {cut},  {piece.Finished}"]];
    }

    private bool TryWithoutFinished(KeyedPiece piece, Box box)
    {
        string[] lines = [$"{piece.Key}  {piece.Name}", $"cut {piece.Cut}"];
        string[] line = [$"{lines[0]},  {lines[1]}"];
        return piece.Finished is not null && FontSizes.Any(fontSize =>
            TryWrite(lines, box, fontSize, upwards: false, paper: false) || TryWrite(line, box, fontSize, upwards: false, paper: false)
            || TryWrite(lines, box, fontSize, upwards: true, paper: false));
    }

    // A long name is cut off where the sizes have room and enough of the name is left to know it by.
    private bool TryShortened(KeyedPiece piece, Box box)
    {
        const decimal FontSize = 9.5m;
        string[] sizes = piece.Finished is null ? [$"cut {piece.Cut}"] : [$"cut {piece.Cut}", piece.Finished];
        foreach (var upwards in (bool[])[false, true])
        {
            var room = (upwards ? box.Height : box.Width) - 10;
            var name = Lettering.Shorten($"{piece.Key}  {piece.Name}", FontSize, room, bold: true);
            if (name.Length >= 12 && TryWrite([name, .. sizes], box, FontSize, upwards, paper: false))
            {
                return true;
            }
        }

        return false;
    }

    private bool TryName(KeyedPiece piece, Box box) =>
        TryWrite([$"{piece.Key}  {piece.Name}"], box, FontSizes[^1], upwards: false, piece.Piece is LeftoverPiece);

    private bool TrySign(KeyedPiece piece, Box box)
    {
        var sign = Box.Around(box.CentreX, box.CentreY, Mark.Size + 2, Mark.Size);
        if (box.Width < sign.Width || box.Height < sign.Height || occupied.Any(sign.Overlaps))
        {
            return false;
        }

        occupied.Add(sign);
        elements.AddRange(new Mark(piece.Key, MarkKind.Piece, 0, 0, Side.Above).Sign(box.CentreX, box.CentreY));
        return true;
    }

    private bool TryWrite(string[] lines, Box box, decimal fontSize, bool upwards, bool paper)
    {
        var length = lines.Select((line, index) => Lettering.Width(line, fontSize, index == 0)).Max() + 4;
        var height = (lines.Length * fontSize * Lettering.LineHeight) + 1;
        var text = Box.Around(box.CentreX, box.CentreY, upwards ? height : length, upwards ? length : height);
        if (text.Width + 4 > box.Width || text.Height + 1 > box.Height || occupied.Any(text.Overlaps))
        {
            return false;
        }

        occupied.Add(text);
        if (paper)
        {
            elements.Add(Shapes.Rect(text, "paper"));
        }

        elements.Add(Shapes.Block(box.CentreX, box.CentreY, fontSize, upwards, lines));
        return true;
    }
}
