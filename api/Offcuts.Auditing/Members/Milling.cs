using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>What a board must be to be milled to a part: cutting rules 1 and 2.</summary>
internal static class Milling
{
    /// <summary>What milling takes from a board of this kind.</summary>
    public static Allowances Allowances(Shop shop, BoardKind kind, Surface surface) =>
        kind == BoardKind.Sheet ? shop.Sheet : surface == Surface.Rough ? shop.Rough : shop.Surfaced;

    /// <summary>Whether the board's thickness suits the finished thickness at all.</summary>
    public static bool SuitsThickness(Shop shop, BoardKind kind, Surface surface, Length board, Length finished) =>
        (kind == BoardKind.Sheet || surface == Surface.Surfaced) && board == finished
        || (kind == BoardKind.Solid && board >= finished + Allowances(shop, kind, surface).Thickness);

    /// <summary>
    /// The widest blank that the machines take: jointer and planer for rough wood, the planer for surfaced wood that is planed again; null for
    /// sheets and for surfaced wood of the finished thickness, which pass neither.
    /// </summary>
    public static Length? WidestBlank(Shop shop, BoardKind kind, Surface surface, Length board, Length finished) =>
        kind == BoardKind.Sheet || (surface == Surface.Surfaced && board == finished) ? null
        : surface == Surface.Rough ? Length.Min(shop.JointerWidth, shop.PlanerWidth)
        : shop.PlanerWidth;
}
