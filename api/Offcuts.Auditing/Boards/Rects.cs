using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>What the auditor asks of rectangles.</summary>
internal static class Rects
{
    /// <summary>Whether one lies within the other, edges included.</summary>
    public static bool Contains(this Rect outer, Rect inner) =>
        inner.X >= outer.X && inner.Y >= outer.Y && inner.Right <= outer.Right && inner.Top <= outer.Top;

    /// <summary>Whether there is wood in it.</summary>
    public static bool HasArea(this Rect rect) => rect.Length > Length.Zero && rect.Width > Length.Zero;

    /// <summary>The rectangle with its axes exchanged, so that one rule serves both directions of cut.</summary>
    public static Rect Transposed(this Rect rect) => new(rect.Y, rect.X, rect.Width, rect.Length);
}
