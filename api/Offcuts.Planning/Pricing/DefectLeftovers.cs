using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// An upper bound on what a board with defects gives, leftovers counted. Outside the areas that are cut, leftovers are whatever clear rectangles there are: together
/// worth no more than the clear wood there at the rate of the largest piece that the board could hold. So with a rate r, clear wood A and areas a of a division
/// <code>
/// value &lt;= r A + max { sum over the areas that are cut of (best value of a - r |a|) : at least one is cut }
/// </code>
/// To an area that holds tolerated defects the model gives no leftovers; there they are bounded by r |a| as well, so that only what it makes counts.
/// </summary>
internal sealed class DefectLeftovers(PlanningModel model)
{
    private readonly Trims trims = new(model.Problem.Shop);
    private readonly Dictionary<int, double> clear = [];

    /// <summary>Whether leftovers of a board may lie elsewhere than its patterns say.</summary>
    public static bool Concern(BoardType board) => board.Divisions.Count > 0 || board.Boards.Any(each => each.Defects.Count > 0);

    /// <summary>The bound for a board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="value">The best value of a pattern of an area, or of the board itself if it is cut as one rectangle.</param>
    public double Value(BoardType board, Func<BoardType, double> value)
    {
        var rate = Rate(board);
        var divisions = board.Divisions.Count == 0 ? [[board]] : board.Divisions.Select(division => division.Areas);
        return (rate * Clear(board)) + divisions.Max(areas =>
        {
            var more = areas.Select(area => value(area) - (area.Profile.RatePerSquareTick == 0 ? 0 : rate * area.Along * area.Across)).ToList();
            return more.Exists(each => each > 0) ? more.Sum(each => Math.Max(0, each)) : more.Max();
        });
    }

    /// <summary>The most that its leftovers can be worth.</summary>
    public double Most(BoardType board) => Rate(board) * Clear(board);

    // Worth for an area grows with both extents.
    private static double Rate(BoardType board)
    {
        var (along, across) = (board.Size.Length.Ticks, board.Size.Width.Ticks);
        return SearchWorth.Of(along, across, board.Profile.RatePerSquareTick) / ((double)along * across);
    }

    /// <summary>The most clear wood that any of the boards has, in square ticks.</summary>
    private double Clear(BoardType type)
    {
        if (!clear.TryGetValue(type.Index, out var most))
        {
            clear.Add(type.Index, most = type.Boards.Max(board => trims.Usable(board) is { } usable ? Clear(usable, board.Defects) : 0));
        }

        return most;
    }

    private static double Clear(Rect usable, IReadOnlyList<Defect> defects)
    {
        var (xs, ys) = (
            Between(usable.X, usable.Right, defects.SelectMany(defect => new[] { defect.Area.X, defect.Area.Right })),
            Between(usable.Y, usable.Top, defects.SelectMany(defect => new[] { defect.Area.Y, defect.Area.Top })));
        return xs.Zip(xs.Skip(1)).Sum(x => ys.Zip(ys.Skip(1)).Sum(y =>
            defects.Any(defect => defect.Area.X <= x.First && defect.Area.Right >= x.Second && defect.Area.Y <= y.First && defect.Area.Top >= y.Second)
                ? 0
                : (double)(x.Second - x.First).Ticks * (y.Second - y.First).Ticks));
    }

    private static List<Length> Between(Length low, Length high, IEnumerable<Length> edges) =>
        [.. edges.Where(at => at > low && at < high).Append(low).Append(high).Distinct().Order()];
}
