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
    /// Whether the board's thickness suits the finished thickness, if flattening takes so much: all of it where the wood is milled; where it is used as it
    /// is, the shop says how much may stay.
    /// </summary>
    public static bool SuitsThickness(Shop shop, BoardKind kind, Surface surface, Length board, Length finished, Length warp) =>
        IsUsedAsItIs(kind, surface, board, finished)
            ? warp <= shop.FlatEnough
            : kind == BoardKind.Solid && board - warp >= finished + Allowances(shop, kind, surface).Thickness;

    /// <summary>Whether wood of this kind is not milled in thickness for such a part.</summary>
    public static bool IsUsedAsItIs(BoardKind kind, Surface surface, Length board, Length finished) =>
        board == finished && (kind == BoardKind.Sheet || surface == Surface.Surfaced);

    /// <summary>
    /// The widest blank that the machines take: jointer and planer for rough and skip-planed wood and for surfaced wood that is not flat enough, the
    /// planer for surfaced wood that is planed again; null for sheets and for surfaced wood of the finished thickness, which pass neither.
    /// </summary>
    public static Length? WidestBlank(Shop shop, BoardKind kind, Surface surface, Length board, Length finished, Length warp) =>
        kind == BoardKind.Sheet || IsUsedAsItIs(kind, surface, board, finished) ? null
        : surface != Surface.Surfaced || warp > shop.FlatEnough ? Length.Min(shop.JointerWidth, shop.PlanerWidth)
        : shop.PlanerWidth;
}
