using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>
/// A blank as it may lie on a board: extents along and across it, in ticks. Where the part has tolerances these are the least, and
/// <see cref="MoreAlong"/> and <see cref="MoreAcross"/> say by how much it may be larger.
/// </summary>
/// <param name="Row">The part's row.</param>
/// <param name="Along">Extent along the board.</param>
/// <param name="Across">Extent across the board.</param>
/// <param name="Turned">Whether the part's length lies across the board.</param>
/// <param name="Recipe">How the blank becomes pieces of the part.</param>
/// <param name="Pieces">How many pieces (or layers) it gives; what is not needed is left out.</param>
/// <param name="Units">What one of them counts in the row.</param>
/// <param name="MoreAlong">By how much it may be larger along the board.</param>
/// <param name="MoreAcross">By how much it may be larger across the board.</param>
internal readonly record struct BlankOption(
    int Row, long Along, long Across, bool Turned, Recipe Recipe, int Pieces, int Units, long MoreAlong = 0, long MoreAcross = 0)
{
    /// <summary>What it counts in the row.</summary>
    public long Yield => (long)Pieces * Units;

    /// <summary>How many such blanks at most are of use for a need.</summary>
    public long Times(long need) => need <= 0 ? 0 : (need + Yield - 1) / Yield;

    /// <summary>Saw cuts through its thickness.</summary>
    public int Resaws => ((Pieces + Recipe.InRow - 1) / Recipe.InRow) - 1;

    /// <summary>The blank with no more pieces than serve a need.</summary>
    public BlankOption Within(long need) => need >= Yield ? this : this with { Pieces = (int)((Math.Max(1, need) + Units - 1) / Units) };
}

/// <summary>
/// The strips of one panel as they may be cut from a board, in ticks. All rows (copies and sub-panels) of the panel share
/// length and limits, the rows of one copy standing together; <see cref="Edge"/> is what jointing takes of the sawn width.
/// </summary>
/// <param name="Rows">The rows, by copy and sub-panel.</param>
/// <param name="SubPanels">How many sub-panels each copy has.</param>
/// <param name="Room">How much wider than its equal share a sub-panel may be.</param>
/// <param name="Along">Length of a strip.</param>
/// <param name="Edge">What jointing takes of its width.</param>
/// <param name="Narrowest">The least net width.</param>
/// <param name="Widest">The largest.</param>
internal sealed record StripFamily(int[] Rows, int SubPanels, long Room, long Along, long Edge, long Narrowest, long Widest)
{
    /// <summary>The rows of the other sub-panels of the same copy of the panel.</summary>
    public IEnumerable<int> Siblings(int row)
    {
        var copy = Array.IndexOf(Rows, row) / SubPanels;
        return Rows.Skip(copy * SubPanels).Take(SubPanels).Where(other => other != row);
    }
}

/// <summary>What can be cut from the boards of one or more classes that are alike for the job, and what their wood is worth.</summary>
internal sealed record Profile(
    int Index, string Species, Length Thickness, BlankOption[] Blanks, StripFamily[] Families, double RatePerSquareTick, KeepFaces Kept)
{
    /// <summary>Worth in minor units of a leftover with the given extents in ticks; nothing for one that is not kept.</summary>
    public double WorthOf(long along, long across) => Kept.Include(along, across) ? SearchWorth.Of(along, across, RatePerSquareTick) : 0;

    /// <summary>Whether nothing can be cut from it.</summary>
    public bool IsEmpty => Blanks.Length == 0 && Families.Length == 0;

    /// <summary>Whether anything fits on a rectangle.</summary>
    public bool FitsOn(Rect at) => Array.Exists(Blanks, blank => blank.Along <= at.Length.Ticks && blank.Across <= at.Width.Ticks)
        || Array.Exists(Families, family => family.Along <= at.Length.Ticks && family.Narrowest + family.Edge <= at.Width.Ticks);
}
