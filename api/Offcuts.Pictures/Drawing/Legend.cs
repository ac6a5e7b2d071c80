namespace Offcuts.Pictures.Drawing;

/// <summary>What the signs of a diagram mean.</summary>
internal static class Legend
{
    public const string Text =
        "Numbers in rings are cuts in their order (the first is black), letters are pieces. Black bars are the saw's kerf, to scale. "
        + "Hatched: keep for the rack. Dotted: waste. Dashed edges: to be glued. Dashed and crossed out: a defect; dashed only: one that stays in its piece.";
}
