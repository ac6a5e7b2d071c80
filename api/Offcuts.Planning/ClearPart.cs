using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning;

/// <summary>What the defects of a piece leave of it, as plans see it when they put a leftover away.</summary>
public static class ClearPart
{
    /// <summary>
    /// The size of the largest clear rectangle that is kept; of the largest at all where none is. Nothing where the defects cover the piece.
    /// </summary>
    /// <param name="size">The piece.</param>
    /// <param name="defects">Its defects.</param>
    /// <param name="kept">What is kept of its species.</param>
    public static Dimensions Of(Dimensions size, IReadOnlyList<Defect> defects, KeepSizes kept)
    {
        ArgumentNullException.ThrowIfNull(defects);
        ArgumentNullException.ThrowIfNull(kept);
        if (defects.Count == 0)
        {
            return size;
        }

        var face = new Rect(Length.Zero, Length.Zero, size.Length, size.Width);
        var areas = defects.Select(defect => defect.Area).ToList();
        var clear = ClearRectangle.Largest(face, areas, new KeepFaces(kept, size.Thickness).Include) ?? ClearRectangle.Largest(face, areas) ?? default;
        return new(size.Thickness, clear.Width, clear.Length);
    }
}
