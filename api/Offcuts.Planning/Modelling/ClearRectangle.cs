using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Finds the part of a board that is free of defects.</summary>
internal static class ClearRectangle
{
    /// <summary>
    /// The rectangle of the largest area inside <paramref name="region"/> that no defect touches; null if there is none. Its ends lie on the
    /// region's or the defects' ends, so all pairs of these are tried, each with the widest gap that the defects between them leave. With
    /// <paramref name="accept"/>, which must accept what is larger than what it accepts, only among those it accepts.
    /// </summary>
    public static Rect? Largest(Rect region, IEnumerable<Rect> defects, Predicate<Rect>? accept = null)
    {
        var inside = defects.Where(region.Overlaps).OrderBy(defect => defect.Y).ToList();
        var xs = Edges(region.X, region.Right, inside.SelectMany(d => new[] { d.X, d.Right }));
        Rect? best = null;
        for (var left = 0; left < xs.Count; left++)
        {
            for (var right = left + 1; right < xs.Count; right++)
            {
                var gap = WidestGap(region with { X = xs[left], Length = xs[right] - xs[left] }, inside);
                if (gap.Width > Length.Zero && (best is null || gap.Area > best.Value.Area) && (accept is null || accept(gap)))
                {
                    best = gap;
                }
            }
        }

        return best;
    }

    /// <summary>The widest clear rectangle that is as long as the span. The defects come from the lower edge up.</summary>
    private static Rect WidestGap(Rect span, List<Rect> defects)
    {
        var (low, widest) = (span.Y, span with { Width = Length.Zero });
        foreach (var defect in defects)
        {
            if (defect.Overlaps(span))
            {
                widest = Wider(low, defect.Y);
                low = Length.Larger(low, defect.Top);
            }
        }

        return Wider(low, span.Top);

        Rect Wider(Length from, Length to) => to - from > widest.Width ? span with { Y = from, Width = to - from } : widest;
    }

    private static List<Length> Edges(Length low, Length high, IEnumerable<Length> between) =>
        [.. between.Append(low).Append(high).Where(at => at >= low && at <= high).Distinct().Order()];
}
