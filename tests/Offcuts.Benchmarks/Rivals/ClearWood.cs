using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Finds wood clear of defects.</summary>
internal static class ClearWood
{
    /// <summary>The rectangle of the largest area within a face that no defect touches, among those accepted; its sides lie on edges of the face or of defects.</summary>
    public static Rect? Largest(Rect face, IReadOnlyList<Rect> defects, Predicate<Rect> accept)
    {
        var inside = defects.Where(face.Overlaps).ToList();
        var xs = Edges(face.X, face.Right, inside.SelectMany(defect => new[] { defect.X, defect.Right }));
        var ys = Edges(face.Y, face.Top, inside.SelectMany(defect => new[] { defect.Y, defect.Top }));
        return Spans(xs).SelectMany(x => Spans(ys).Select(y => new Rect(x.Low, y.Low, x.High - x.Low, y.High - y.Low)))
            .Where(rect => !inside.Exists(rect.Overlaps) && accept(rect))
            .OrderByDescending(rect => rect.Area).Select(rect => (Rect?)rect).FirstOrDefault();
    }

    private static List<Length> Edges(Length low, Length high, IEnumerable<Length> between) =>
        [.. between.Append(low).Append(high).Where(at => at >= low && at <= high).Distinct().Order()];

    private static IEnumerable<(Length Low, Length High)> Spans(List<Length> edges) =>
        edges.SelectMany((low, index) => edges.Skip(index + 1).Select(high => (low, high)));
}
