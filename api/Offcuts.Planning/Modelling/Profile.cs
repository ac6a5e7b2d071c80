using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>
/// A blank as it may lie on a board: extents along and across it, in ticks. Where the part has tolerances these are the least, and
/// <see cref="MoreAlong"/> and <see cref="MoreAcross"/> say by how much it may be larger.
/// </summary>
internal readonly record struct BlankOption(int Row, long Along, long Across, bool Turned, long MoreAlong = 0, long MoreAcross = 0);

/// <summary>
/// The strips of one panel as they may be cut from a board, in ticks. All rows (copies and sub-panels) of the panel share
/// length and limits; <see cref="Edge"/> is what jointing takes of the sawn width.
/// </summary>
internal sealed record StripFamily(int[] Rows, long Along, long Edge, long Narrowest, long Widest);

/// <summary>What can be cut from the boards of one or more classes that are alike for the job, and what their wood is worth.</summary>
internal sealed record Profile(
    int Index, string Species, Length Thickness, BlankOption[] Blanks, StripFamily[] Families, double RatePerSquareTick)
{
    /// <summary>Whether nothing can be cut from it.</summary>
    public bool IsEmpty => Blanks.Length == 0 && Families.Length == 0;

    /// <summary>Whether anything fits on a rectangle.</summary>
    public bool FitsOn(Rect at) => Array.Exists(Blanks, blank => blank.Along <= at.Length.Ticks && blank.Across <= at.Width.Ticks)
        || Array.Exists(Families, family => family.Along <= at.Length.Ticks && family.Narrowest + family.Edge <= at.Width.Ticks);
}
