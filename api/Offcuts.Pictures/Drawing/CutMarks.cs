using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Drawing;

/// <summary>Numbers the cuts: at the board's edge where a cut reaches it, else on the cut itself where nothing is written.</summary>
internal sealed class CutMarks
{
    private static readonly decimal[] PlacesAlong = [0.5m, 0.25m, 0.75m, 0.1m, 0.9m, 0.4m, 0.6m, 0.05m, 0.95m, 0.02m, 0.98m];
    private readonly List<XElement> elements = [];
    private readonly List<Mark> marks = [];

    public CutMarks(BoardView view, BoardCut board, IEnumerable<Box> occupied)
    {
        var taken = occupied.ToList();
        foreach (var cut in board.Cuts.OrderBy(cut => cut.Order))
        {
            Place(view, board, cut, taken);
        }
    }

    /// <summary>The numbers that stand on the board.</summary>
    public IReadOnlyList<XElement> Elements => elements;

    /// <summary>The numbers that stand beside it.</summary>
    public IReadOnlyList<Mark> Marks => marks;

    private void Place(BoardView view, BoardCut board, SawCut cut, List<Box> taken)
    {
        var kerf = view.Of(cut.Kerf);
        var mark = new Mark(
            FormattableString.Invariant($"{cut.Order}"), cut.Order == 1 ? MarkKind.FirstCut : MarkKind.Cut,
            kerf.CentreX, kerf.CentreY, kerf.CentreY < view.Bottom / 2 ? Side.Above : Side.Below);
        if (AtEdge(mark, cut, kerf, board.Size) is { } atEdge && HasRoom(atEdge.Side, view))
        {
            marks.Add(atEdge);
            taken.Add(Reserved(atEdge));
            return;
        }

        var free = PlacesAlong
            .Select(place => cut.Direction == FirstCut.Rip
                ? Box.Around(kerf.X + (kerf.Width * place), kerf.CentreY, Mark.Size, Mark.Size)
                : Box.Around(kerf.CentreX, kerf.Y + (kerf.Height * place), Mark.Size, Mark.Size))
            .Where(box => !taken.Any(box.Overlaps))
            .ToList();
        if (free.Count == 0)
        {
            marks.Add(cut.Direction == FirstCut.Rip ? mark with { X = ClearOfWords(mark, kerf, view, taken) } : mark);
            return;
        }

        taken.Add(free[0]);
        elements.AddRange(mark.Sign(free[0].CentreX, free[0].CentreY));
    }

    // Where along a rip the line to its number goes over the fewest words.
    private static decimal ClearOfWords(Mark mark, Box kerf, BoardView view, List<Box> taken) => PlacesAlong
        .Select(place => kerf.X + (kerf.Width * place))
        .MinBy(x =>
        {
            var line = mark.Side == Side.Above
                ? new Box(x - 1.5m, 0, 3, kerf.CentreY)
                : new Box(x - 1.5m, kerf.CentreY, 3, view.Bottom - kerf.CentreY);
            return taken.Count(line.Overlaps);
        });

    // Beside the board there are two rows between its end and the dimension; above and below rows are added as needed.
    private bool HasRoom(Side side, BoardView view) => side is Side.Above or Side.Below
        || marks.Count(mark => mark.Side == side) < 2 * MarkLanes.PerRow(0, view.Bottom);

    // Where the mark will stand unless its lane is crowded.
    private static Box Reserved(Mark mark) => mark.Side switch
    {
        Side.Above => Box.Around(mark.X, mark.Y - 10, Mark.Size, 20),
        Side.Below => Box.Around(mark.X, mark.Y + 10, Mark.Size, 20),
        Side.Left => Box.Around(mark.X - 10, mark.Y, 20, Mark.Size),
        Side.Right => Box.Around(mark.X + 10, mark.Y, 20, Mark.Size),
    };

    private static Mark? AtEdge(Mark mark, SawCut cut, Box kerf, Dimensions size) => cut.Direction switch
    {
        FirstCut.Crosscut when cut.Kerf.Top == size.Width => mark with { Y = kerf.Y, Side = Side.Above, AtEdge = true },
        FirstCut.Crosscut when cut.Kerf.Y == Length.Zero => mark with { Y = kerf.Bottom, Side = Side.Below, AtEdge = true },
        FirstCut.Rip when cut.Kerf.Right == size.Length => mark with { X = kerf.Right, Side = Side.Right, AtEdge = true },
        FirstCut.Rip when cut.Kerf.X == Length.Zero => mark with { X = kerf.X, Side = Side.Left, AtEdge = true },
        _ => null,
    };
}
