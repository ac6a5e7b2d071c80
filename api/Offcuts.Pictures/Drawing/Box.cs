namespace Offcuts.Pictures.Drawing;

/// <summary>A rectangle on the drawing, in its units of 1/96 inch at full page width; y grows downwards.</summary>
internal readonly record struct Box(decimal X, decimal Y, decimal Width, decimal Height)
{
    public decimal Right => X + Width;

    public decimal Bottom => Y + Height;

    public decimal CentreX => X + (Width / 2);

    public decimal CentreY => Y + (Height / 2);

    public static Box Around(decimal centreX, decimal centreY, decimal width, decimal height) =>
        new(centreX - (width / 2), centreY - (height / 2), width, height);

    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;
}
