using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>One way to cut an extra blank out of a spot: into which corner, and which cut first.</summary>
internal sealed class ExtraPlace
{
    private readonly SawnBoard board;
    private readonly ExtraSpot spot;
    private readonly BlankOption blank;
    private readonly PieceUse use;
    private readonly FirstCut first;
    private readonly bool isFar;
    private readonly bool isHigh;
    private readonly PlanningProblem problem;

    private ExtraPlace(
        SawnBoard board, ExtraSpot spot, BlankOption blank, PieceUse use, PlanningProblem problem, FirstCut first, bool isFar, bool isHigh)
    {
        (this.board, this.spot, this.blank, this.use, this.problem) = (board, spot, blank, use, problem);
        (this.first, this.isFar, this.isHigh) = (first, isFar, isHigh);
        Loss = LossOf();
    }

    /// <summary>How many pieces the blank gives.</summary>
    public int Pieces => blank.Pieces;

    /// <summary>What is lost: worth of leftovers first, then the size of what it is cut from, then how little stays in one piece.</summary>
    private (Int128 Worth, Int128 Area, long Together) Loss { get; }

    /// <summary>Whether it loses less for each of its pieces.</summary>
    public bool LosesLessThan(ExtraPlace other) =>
        (Loss.Worth * other.Pieces, Loss.Area * other.Pieces, Loss.Together).CompareTo((other.Loss.Worth * Pieces, other.Loss.Area * Pieces, other.Loss.Together)) < 0;

    /// <summary>All ways that keep the stages and lie clear of what is lost.</summary>
    public static IEnumerable<ExtraPlace> All(SawnBoard board, ExtraSpot spot, BlankOption blank, PieceUse use, PlanningProblem problem)
    {
        if (blank.Along > spot.Node.Along || blank.Across > spot.Node.Across)
        {
            yield break;
        }

        bool[] sides = board.Lost.Count == 0 ? [false] : [false, true];
        foreach (var first in new[] { FirstCut.Crosscut, FirstCut.Rip })
        {
            foreach (var isFar in sides)
            {
                foreach (var isHigh in sides)
                {
                    var place = new ExtraPlace(board, spot, blank, use, problem, first, isFar, isHigh);
                    if (place.KeepsStages() && place.IsClear())
                    {
                        yield return place;
                    }
                }
            }
        }
    }

    /// <summary>Makes the cuts: one to cut a front off, and one to trim the blank out of the front.</summary>
    public void Cut()
    {
        var second = Other(first);
        var (order, orderOfSecond) = (board.NextCut(), board.NextCut());
        var piece = board.Extra((blank.Along, blank.Across), blank, use);
        var front = Row(second, piece, spot.Node.Extent(second), Extent(first), orderOfSecond);
        board.Replace(spot.Node, Row(first, front, spot.Node.Extent(first), spot.Node.Extent(second), order));
    }

    /// <summary>What is wanted, a saw cut and the rest, one after another; just what is wanted if it takes the whole.</summary>
    private CutNode Row(FirstCut axis, CutNode wanted, long whole, long side, int order)
    {
        var extent = wanted.Extent(axis);
        if (extent == whole)
        {
            return wanted;
        }

        var kerf = Math.Min(problem.Shop.Kerf.Ticks, whole - extent);
        var rest = whole - extent - kerf;
        var (along, across) = Across(axis, kerf, side);
        List<CutNode> items = [wanted, new CutNode(along, across) { Cut = order }];
        if (rest > 0)
        {
            items.Add(board.Offcut(Across(axis, rest, side), !spot.Node.IsWaste && IsKept(axis, rest, side)));
        }

        if (axis == FirstCut.Crosscut ? isFar : isHigh)
        {
            items.Reverse();
        }

        var (rowAlong, rowAcross) = Across(axis, whole, side);
        var row = new CutNode(rowAlong, rowAcross);
        row.Divide(axis, items);
        return row;
    }

    /// <summary>The extents of a piece in the direction of a cut and across it, as extents along and across the board.</summary>
    private static (long Along, long Across) Across(FirstCut axis, long extent, long other) =>
        axis == FirstCut.Crosscut ? (extent, other) : (other, extent);

    private static FirstCut Other(FirstCut axis) => axis == FirstCut.Crosscut ? FirstCut.Rip : FirstCut.Crosscut;

    private long Extent(FirstCut axis) => axis == FirstCut.Crosscut ? blank.Along : blank.Across;

    private bool KeepsStages()
    {
        var most = problem.Shop.Recut ? 3 : 2;
        var needsFirst = Extent(first) < spot.Node.Extent(first);
        var needsSecond = Extent(Other(first)) < spot.Node.Extent(Other(first));
        var stage = spot.Stage;
        var last = spot.Last;
        if (needsFirst)
        {
            stage = first == last ? stage : stage + 1;
            last = first;
        }

        // The second cut only trims; what it leaves is a spot of a later stage.
        return stage <= most && (!needsSecond || (Other(first) == last ? stage : stage + 1) <= most + 1);
    }

    private bool IsClear()
    {
        var along = Length.FromTicks(blank.Along);
        var across = Length.FromTicks(blank.Across);
        var at = new Rect(
            isFar ? spot.At.Right - along : spot.At.X, isHigh ? spot.At.Top - across : spot.At.Y, along, across);
        return !board.Lost.Any(lost => lost.Overlaps(at));
    }

    private (Int128 Worth, Int128 Area, long Together) LossOf()
    {
        var second = Other(first);
        var kerf = problem.Shop.Kerf.Ticks;
        var behind = Math.Max(0, spot.Node.Extent(first) - Extent(first) - kerf);
        var beside = Math.Max(0, spot.Node.Extent(second) - Extent(second) - kerf);
        var lost = spot.Node.IsWaste ? 0
            : WorthOf(first, spot.Node.Extent(first), spot.Node.Extent(second)) - WorthOf(first, behind, spot.Node.Extent(second)) - WorthOf(second, beside, Extent(first));
        var largest = Math.Max((double)behind * spot.Node.Extent(second), (double)beside * Extent(first));
        return (lost, (Int128)spot.Node.Along * spot.Node.Across, -(long)(largest / Length.TicksPerInch));
    }

    private bool IsKept(FirstCut axis, long extent, long other) => extent > 0 && other > 0 && board.Kept.Include(At(axis, extent, other));

    private long WorthOf(FirstCut axis, long extent, long other) => extent <= 0 || other <= 0 ? 0
        : !IsKept(axis, extent, other) ? 0
        : Worth.OfKept(SizeOf(axis, extent, other), problem.Rates.Of(board.Type.Class.Species)).MinorUnits;

    private Dimensions SizeOf(FirstCut axis, long extent, long other)
    {
        var at = At(axis, extent, other);
        return new Dimensions(board.Type.Size.Thickness, at.Width, at.Length);
    }

    private static Rect At(FirstCut axis, long extent, long other)
    {
        var (along, across) = Across(axis, extent, other);
        return new Rect(Length.Zero, Length.Zero, Length.FromTicks(along), Length.FromTicks(across));
    }
}
