using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>One defect, or several near each other as one rectangle around them.</summary>
/// <param name="At">Where it lies.</param>
/// <param name="Kinds">The kinds in it, in order.</param>
internal sealed record DefectBox(Rect At, IReadOnlyList<string> Kinds)
{
    /// <summary>At most so many boxes around all defects: those whose common box adds least to their own area are joined first.</summary>
    public static List<DefectBox> Around(IEnumerable<Defect> defects, int most)
    {
        var boxes = defects.Select(defect => new DefectBox(defect.Area, [defect.Kind])).ToList();
        while (Nearest(boxes, boxes.Count > most) is var (one, other))
        {
            boxes.Remove(one);
            boxes.Remove(other);
            boxes.Add(one.With(other));
        }

        return boxes;
    }

    /// <summary>The two that lose least when they are joined; if none need be, two of the same kinds that lose nothing.</summary>
    private static (DefectBox One, DefectBox Other)? Nearest(List<DefectBox> boxes, bool mustJoin)
    {
        (DefectBox, DefectBox)? nearest = null;
        var least = mustJoin ? double.PositiveInfinity : double.Epsilon; // Anything below the least positive number is nothing.
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = i + 1; j < boxes.Count; j++)
            {
                if (mustJoin || boxes[i].Kinds.SequenceEqual(boxes[j].Kinds, StringComparer.Ordinal))
                {
                    var added = Added(boxes[i].With(boxes[j]), boxes[i], boxes[j]);
                    (nearest, least) = added < least ? ((boxes[i], boxes[j]), added) : (nearest, least);
                }
            }
        }

        return nearest;
    }

    /// <summary>How much sound wood the common box holds.</summary>
    private static double Added(DefectBox joined, DefectBox one, DefectBox other) => (double)(
        (Int128)joined.At.Area.SquareTicks - one.At.Area.SquareTicks - other.At.Area.SquareTicks + Common(one.At, other.At));

    private static long Common(Rect one, Rect other) => one.Overlaps(other)
        ? ((Length.Min(one.Right, other.Right) - Length.Larger(one.X, other.X)) * (Length.Min(one.Top, other.Top) - Length.Larger(one.Y, other.Y))).SquareTicks
        : 0;

    private DefectBox With(DefectBox other)
    {
        var (x, y) = (Length.Min(At.X, other.At.X), Length.Min(At.Y, other.At.Y));
        return new DefectBox(
            new Rect(x, y, Length.Larger(At.Right, other.At.Right) - x, Length.Larger(At.Top, other.At.Top) - y),
            [.. Kinds.Concat(other.Kinds).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
    }
}
