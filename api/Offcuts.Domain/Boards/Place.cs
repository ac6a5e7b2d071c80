namespace Offcuts.Domain;

/// <summary>A place where boards lie, as far as the shop has said something of it. Boards name their place as text; one that nobody set is easy to get at.</summary>
/// <param name="Name">Its name, exactly as boards have it.</param>
/// <param name="Reach">How hard it is to get at what lies there.</param>
/// <param name="LimitCubicMetres">How much wood it is to hold at most, in cubic metres; null for no limit.</param>
/// <param name="Note">Anything else worth remembering.</param>
public sealed record Place(string Name, Reach Reach = Reach.Easy, decimal? LimitCubicMetres = null, string? Note = null);

/// <summary>How hard it is to get at a board where it lies, from the easiest up.</summary>
public enum Reach
{
    /// <summary>It is at hand.</summary>
    Easy,

    /// <summary>Some boards must be moved first.</summary>
    Behind,

    /// <summary>The whole stack must be moved first.</summary>
    Buried,
}
