using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Finds the part of a board that is free of defects.</summary>
internal static class ClearRectangle
{
    /// <summary>
    /// The rectangle of the largest area inside <paramref name="region"/> that no defect touches; null if there is none. Its sides lie on the
    /// region's or the defects' edges, so all candidates are tried. With <paramref name="accept"/>, only among those it accepts.
    /// </summary>
    public static Rect? Largest(Rect region, IEnumerable<Rect> defects, Predicate<Rect>? accept = null)
    {
        var inside = defects.Where(region.Overlaps).ToList();
        if (inside.Count == 0)
        {
            return accept is null || accept(region) ? region : null;
        }

        var xs = Edges(region.X, region.Right, inside.SelectMany(d => new[] { d.X, d.Right }));
        var ys = Edges(region.Y, region.Top, inside.SelectMany(d => new[] { d.Y, d.Top }));
        Rect? best = null;
        for (var left = 0; left < xs.Count; left++)
        {
            for (var right = left + 1; right < xs.Count; right++)
            {
                for (var low = 0; low < ys.Count; low++)
                {
                    for (var high = low + 1; high < ys.Count; high++)
                    {
                        var rect = new Rect(xs[left], ys[low], xs[right] - xs[left], ys[high] - ys[low]);
                        if ((best is null || rect.Area > best.Value.Area) && !inside.Exists(rect.Overlaps)
                            && (accept is null || accept(rect)))
                        {
                            best = rect;
                        }
                    }
                }
            }
        }

        return best;
    }

    private static List<Length> Edges(Length low, Length high, IEnumerable<Length> between) =>
        [.. between.Append(low).Append(high).Where(at => at >= low && at <= high).Distinct().Order()];
}
