using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>What a board must be to be milled to a part: cutting rules 1 and 2.</summary>
internal static class Milling
{
    /// <summary>What milling takes from a board of this kind.</summary>
    public static Allowances Allowances(Shop shop, BoardKind kind, Surface surface) =>
        kind == BoardKind.Sheet ? shop.Sheet
        : surface == Surface.Rough ? shop.Rough
        : surface == Surface.SkipPlaned ? shop.SkipPlaned
        : shop.Surfaced;

    /// <summary>
    /// The shortest blank that is safe at the machines that it must pass; zero where it passes none. Surfaced wood passes the jointer only if it is
    /// recorded as warped.
    /// </summary>
    public static Length ShortestBlank(Shop shop, BoardKind kind, Surface surface, Length board, Length least, Length most, bool isFlat) =>
        kind == BoardKind.Sheet || IsUsedAsItIs(kind, surface, board, least, most) ? Length.Zero
        : surface != Surface.Surfaced || !isFlat ? Length.Larger(shop.ShortestAtJointer, shop.ShortestAtPlaner)
        : shop.ShortestAtPlaner;

    /// <summary>
    /// Whether the board's thickness suits a finished thickness from the least to the most, if flattening takes so much: all of it where the wood is milled; where it is used as it
    /// is, the shop says how much may stay.
    /// </summary>
    public static bool SuitsThickness(Shop shop, BoardKind kind, Surface surface, Length board, Length least, Length most, Length warp) =>
        IsUsedAsItIs(kind, surface, board, least, most)
            ? warp <= shop.FlatEnough
            : kind == BoardKind.Solid && board - warp >= least + Allowances(shop, kind, surface).Thickness;

    /// <summary>Whether wood of this kind is not milled in thickness for such a part.</summary>
    public static bool IsUsedAsItIs(BoardKind kind, Surface surface, Length board, Length least, Length most) =>
        least <= board && board <= most && (kind == BoardKind.Sheet || surface == Surface.Surfaced);

    /// <summary>
    /// The widest blank that the machines take: jointer and planer for rough and skip-planed wood and for surfaced wood that is not flat enough, the
    /// planer for surfaced wood that is planed again; null for sheets and for surfaced wood of a finished thickness that will do, which pass neither.
    /// </summary>
    public static Length? WidestBlank(Shop shop, BoardKind kind, Surface surface, Length board, Length least, Length most, Length warp) =>
        kind == BoardKind.Sheet || IsUsedAsItIs(kind, surface, board, least, most) ? null
        : surface != Surface.Surfaced || warp > shop.FlatEnough ? Length.Min(shop.JointerWidth, shop.PlanerWidth)
        : shop.PlanerWidth;
}
