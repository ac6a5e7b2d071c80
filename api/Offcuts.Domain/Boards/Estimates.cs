namespace Offcuts.Domain;

/// <summary>Which sides of a board were only estimated: written as <c>~30</c>, to be measured before it is cut.</summary>
/// <param name="Thickness">Whether the thickness was estimated.</param>
/// <param name="Width">Whether the width was estimated.</param>
/// <param name="Length">Whether the length was estimated.</param>
public readonly record struct Estimates(bool Thickness = false, bool Width = false, bool Length = false)
{
    /// <summary>Whether any side was estimated.</summary>
    public bool Any => this != default;

    /// <summary>
    /// The board as plans count on it: each estimated side smaller by the margin; a sheet's thickness stays, because it is used as it is.
    /// Where the board ends is not known either, so a defect that reaches an estimated end or edge is taken to begin earlier by the margin.
    /// Null if nothing would be left.
    /// </summary>
    /// <param name="board">The board as it was written down.</param>
    /// <param name="margin">What is taken off each estimated side (<see cref="Shop.EstimateMargin"/>).</param>
    public static Board? Counted(Board board, Allowances margin)
    {
        var estimates = board.Estimates;
        if (!estimates.Any)
        {
            return board;
        }

        var size = new Dimensions(
            Less(board.Size.Thickness, estimates.Thickness && board.Kind == BoardKind.Solid, margin.Thickness),
            Less(board.Size.Width, estimates.Width, margin.Width),
            Less(board.Size.Length, estimates.Length, margin.Length));
        return size.Thickness <= Domain.Length.Zero || size.Width <= Domain.Length.Zero || size.Length <= Domain.Length.Zero
            ? null
            : board with
            {
                Size = size,
                Defects = [.. board.Defects.Select(defect => defect with { Area = Counted(defect.Area, board.Size, size) })],
            };
    }

    private static Rect Counted(Rect area, Dimensions written, Dimensions counted)
    {
        var (left, right) = Counted(area.X, area.Right, written.Length, counted.Length);
        var (bottom, top) = Counted(area.Y, area.Top, written.Width, counted.Width);
        return new(left, bottom, right - left, top - bottom);
    }

    // A defect in what is not counted on lies at the very end of what is.
    private static (Length From, Length To) Counted(Length from, Length to, Length written, Length counted)
    {
        var reachesEnd = to == written;
        var begins = Domain.Length.Min(reachesEnd ? Domain.Length.Larger(from - (written - counted), Domain.Length.Zero) : from, counted - Domain.Length.FromTicks(1));
        return (begins, Domain.Length.Larger(begins + Domain.Length.FromTicks(1), Domain.Length.Min(to, counted)));
    }

    private static Length Less(Length side, bool isEstimated, Length margin) => isEstimated ? side - margin : side;
}
