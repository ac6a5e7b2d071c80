using System.Xml.Linq;

namespace Offcuts.Pictures.Drawing;

/// <summary>Lays the marks beside a board out in lanes, one on each side.</summary>
internal sealed class MarkLanes
{
    private const decimal Step = Mark.Size + 1;
    private readonly List<XElement> leaders = [];
    private readonly List<XElement> signs = [];

    public MarkLanes(BoardView view, IReadOnlyList<Mark> marks)
    {
        Above = Lay(marks, Side.Above, view, row => -11 - (row * Step));
        Below = Lay(marks, Side.Below, view, row => view.Bottom + 11 + (row * Step));
        Lay(marks, Side.Left, view, row => BoardView.Left - 11 - (row * Step));
        Lay(marks, Side.Right, view, row => view.Right + 11 + (row * Step));
    }

    /// <summary>How many marks stand in one row of a lane.</summary>
    public static int PerRow(decimal from, decimal to) => Lane.PerRow(Step, from, to);

    /// <summary>Height of the lane above the board.</summary>
    public decimal Above { get; }

    /// <summary>Height of the lane below the board.</summary>
    public decimal Below { get; }

    /// <summary>The marks with their lines; lines first, so that no line crosses a sign.</summary>
    public IEnumerable<XElement> Elements => leaders.Concat(signs);

    private decimal Lay(IReadOnlyList<Mark> all, Side side, BoardView view, Func<int, decimal> lineOf)
    {
        var marks = all.Where(mark => mark.Side == side).ToList();
        var alongLength = side is Side.Above or Side.Below;
        var (from, to) = alongLength ? (BoardView.Left, view.Right) : (0, view.Bottom);
        var places = Lane.Spread([.. marks.Select(mark => alongLength ? mark.X : mark.Y)], Step, from, to);
        foreach (var (mark, (at, row)) in marks.Zip(places))
        {
            var (x, y) = alongLength ? (at, lineOf(row)) : (lineOf(row), at);
            leaders.Add(Shapes.Line(mark.X, mark.Y, x, y, "leader"));
            if (mark.Kind == MarkKind.Piece)
            {
                leaders.Add(Shapes.Circle(mark.X, mark.Y, 1.4m, "dot"));
            }

            signs.AddRange(mark.Sign(x, y));
        }

        return marks.Count == 0 ? 4 : 6 + ((places.Max(place => place.Row) + 1) * Step);
    }
}
