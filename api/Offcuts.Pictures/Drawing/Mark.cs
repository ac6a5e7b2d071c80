using System.Xml.Linq;

namespace Offcuts.Pictures.Drawing;

/// <summary>A number or letter beside the board, with a line to what it stands for.</summary>
/// <param name="Text">The cut's number or the piece's letter.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="X">Where the line ends.</param>
/// <param name="Y">Where the line ends.</param>
/// <param name="Side">On which side of the board it stands.</param>
/// <param name="AtEdge">Whether it stands for something that reaches that side; else its line goes over the board.</param>
internal sealed record Mark(string Text, MarkKind Kind, decimal X, decimal Y, Side Side, bool AtEdge = false)
{
    /// <summary>Height of a mark and of its lane's rows.</summary>
    public const decimal Size = 14;

    /// <summary>Draws the mark's sign with its centre at a point: a disc for the first cut, a ring for others, a square for a piece.</summary>
    public IEnumerable<XElement> Sign(decimal x, decimal y)
    {
        yield return Kind == MarkKind.Piece
            ? Shapes.Rect(Box.Around(x, y, Math.Max(13, Lettering.Width(Text, 9, bold: true) + 5), 13), "sign")
            : Shapes.Circle(x, y, 6.5m, Kind == MarkKind.FirstCut ? "sign first" : "sign");
        yield return Shapes.Text(x, y + 3.2m, Text.Length > 2 ? 7 : 9, "middle", Text, Kind == MarkKind.FirstCut ? "strong inverse" : "strong");
    }
}

/// <summary>What a mark stands for.</summary>
internal enum MarkKind
{
    FirstCut,
    Cut,
    Piece,
}

/// <summary>A side of the board on the drawing.</summary>
internal enum Side
{
    Above,
    Below,
    Left,
    Right,
}
