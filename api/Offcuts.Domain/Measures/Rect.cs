namespace Offcuts.Domain;

/// <summary>A rectangle on the face of a board. The origin is the board's left end and lower edge.</summary>
/// <param name="X">Distance along the grain from the board's left end.</param>
/// <param name="Y">Distance across the grain from the board's lower edge.</param>
/// <param name="Length">Extent along the board's length.</param>
/// <param name="Width">Extent across the board's width.</param>
public readonly record struct Rect(Length X, Length Y, Length Length, Length Width)
{
    /// <summary>The far end along the length.</summary>
    public Length Right => X + Length;

    /// <summary>The far edge across the width.</summary>
    public Length Top => Y + Width;

    /// <summary>The area covered.</summary>
    public Area Area => Length * Width;

    /// <summary>Whether two rectangles share more than an edge.</summary>
    public bool Overlaps(Rect other) => X < other.Right && other.X < Right && Y < other.Top && other.Y < Top;
}
