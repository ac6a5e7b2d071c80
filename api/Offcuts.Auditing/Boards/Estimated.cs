using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>What is sure of boards whose sizes were only estimated.</summary>
internal static class Estimated
{
    /// <summary>The boards in stock, each as large as it surely is; one of which nothing is sure is none.</summary>
    public static IReadOnlyList<Board> Sure(PlanningProblem problem) => [.. problem.Stock
        .Select(board => (Board: board, Size: board.Estimates.Any ? Sure(board, problem.Shop.EstimateMargin) : board.Size))
        .Where(sure => sure.Size.Thickness > Length.Zero && sure.Size.Width > Length.Zero && sure.Size.Length > Length.Zero)
        .Select(sure => sure.Size == sure.Board.Size ? sure.Board : sure.Board with
        {
            Size = sure.Size,
            Defects = [.. sure.Board.Defects.Select(defect => new Defect(defect.Kind, Moved(defect.Area, sure.Board.Size, sure.Size)))],
        })];

    // What is cut from a sheet is as thick as the sheet, whatever that is.
    private static Dimensions Sure(Board board, Allowances margin) => new(
        board.Estimates.Thickness && board.Kind != BoardKind.Sheet ? board.Size.Thickness - margin.Thickness : board.Size.Thickness,
        board.Estimates.Width ? board.Size.Width - margin.Width : board.Size.Width,
        board.Estimates.Length ? board.Size.Length - margin.Length : board.Size.Length);

    private static Rect Moved(Rect area, Dimensions written, Dimensions sure)
    {
        var along = Moved(area.X.Ticks, area.Right.Ticks, written.Length.Ticks, sure.Length.Ticks);
        var across = Moved(area.Y.Ticks, area.Top.Ticks, written.Width.Ticks, sure.Width.Ticks);
        return new(Length.FromTicks(along.From), Length.FromTicks(across.From), Length.FromTicks(along.To - along.From), Length.FromTicks(across.To - across.From));
    }

    // The end may lie anywhere from sure to written, and what begins so far from it may lie as much nearer; all of it lies on the board.
    private static (long From, long To) Moved(long from, long to, long written, long sure)
    {
        var first = Math.Clamp(to < written ? from : from + sure - written, 0, sure - 1);
        return (first, Math.Clamp(to, first + 1, sure));
    }
}
