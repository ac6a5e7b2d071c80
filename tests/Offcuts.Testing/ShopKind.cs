namespace Offcuts.Testing;

/// <summary>How large a random shop is.</summary>
public enum ShopScale
{
    /// <summary>At most 2 boards, 1 or 2 part types of few pieces, seldom a narrow panel: planned in milliseconds, so that thousands can be.</summary>
    Smallest,

    /// <summary>1 to 4 boards, 1 to 3 part types, at most one panel.</summary>
    Tiny,

    /// <summary>40 boards, 12 part types.</summary>
    Workshop,

    /// <summary>300 boards, 40 part types, 2 panels.</summary>
    Large,

    /// <summary>10,000 boards, 60 part types, 2 panels.</summary>
    Huge,
}

/// <summary>How a random shop is made.</summary>
/// <param name="Scale">How large it is.</param>
/// <param name="MustBuy">Whether its own boards cannot suffice, and offers without limit can.</param>
/// <param name="Metric">Millimetres instead of inches.</param>
/// <param name="FullRack">Whether a shop that must buy has as many boards as any other of its scale, not a third of them.</param>
/// <param name="Boards">How many boards it has, if not as many as others of its scale.</param>
/// <param name="Parts">How many part types its design has, if not as many as others of its scale; for each twelve there is a panel.</param>
public sealed record ShopKind(ShopScale Scale, bool MustBuy = false, bool Metric = false, bool FullRack = false, int? Boards = null, int? Parts = null)
{
    /// <summary>Whether it is small enough to try the odd settings too.</summary>
    public bool IsSmall => Scale is ShopScale.Smallest or ShopScale.Tiny;
}
