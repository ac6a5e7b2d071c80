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

    // What is at the edge has the inner rows, so that its lines are short and straight.
    private decimal Lay(IReadOnlyList<Mark> marks, Side side, BoardView view, Func<int, decimal> lineOf)
    {
        var rows = 0;
        foreach (var group in marks.Where(mark => mark.Side == side).GroupBy(mark => mark.AtEdge).OrderByDescending(group => group.Key))
        {
            rows = LayRows([.. group], view, lineOf, rows);
        }

        return rows == 0 ? 4 : 6 + (rows * Step);
    }

    private int LayRows(IReadOnlyList<Mark> marks, BoardView view, Func<int, decimal> lineOf, int firstRow)
    {
        var alongLength = marks[0].Side is Side.Above or Side.Below;
        var (from, to) = alongLength ? (BoardView.Left, view.Right) : (0, view.Bottom);
        var places = Lane.Spread([.. marks.Select(mark => alongLength ? mark.X : mark.Y)], Step, from, to);
        foreach (var (mark, (at, row)) in marks.Zip(places))
        {
            var line = lineOf(firstRow + row);
            var (x, y) = alongLength ? (at, line) : (line, at);
            leaders.Add(Shapes.Line(mark.X, mark.Y, x, y, "leader"));
            if (mark.Kind == MarkKind.Piece)
            {
                leaders.Add(Shapes.Circle(mark.X, mark.Y, 1.4m, "dot"));
            }

            signs.AddRange(mark.Sign(x, y));
        }

        return firstRow + places.Max(place => place.Row) + 1;
    }
}
