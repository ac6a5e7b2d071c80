namespace Offcuts.Domain;

/// <summary>What is asked of the saved designs: in which order, and which of them.</summary>
public sealed record FitQuestion
{
    /// <summary>Which build comes first.</summary>
    public FitOrder Order { get; init; }

    /// <summary>The part of the pile whose wood counts in <see cref="FitOrder.Pile"/>; null for all of it.</summary>
    public FitFocus? Focus { get; init; }

    /// <summary>Tags that a design must have, whatever their case; empty for any.</summary>
    public IReadOnlyList<string> Tags { get; init; } = [];

    /// <summary>The most hours of work; a design that states none is left out then. Null for any.</summary>
    public decimal? MostHours { get; init; }

    /// <summary>The most money still to spend, ready-made items included; null for any.</summary>
    public Money? MostMoney { get; init; }

    /// <summary>How many places are asked for; at least 1.</summary>
    public int Limit { get; init; } = 10;

    /// <summary>Whether a design is one of those that are asked for, as far as it tells by itself.</summary>
    public bool Asks(Design design) =>
        Tags.All(tag => design.Tags.Contains(tag, StringComparer.OrdinalIgnoreCase)) && (MostHours is not { } most || design.Hours <= most);
}

/// <summary>Which build comes first.</summary>
public enum FitOrder
{
    /// <summary>The one that takes least money to finish.</summary>
    Cheapest,

    /// <summary>The one whose parts take most of the pile; see <see cref="PileWeight"/>.</summary>
    Pile,
}

/// <summary>A part of the pile: boards of a species, at a place, of a batch, or of all that are named.</summary>
/// <param name="Species">Species id; null for any.</param>
/// <param name="Place">Place, exactly as entered; null for any.</param>
/// <param name="Batch">Batch, exactly as entered; null for any.</param>
public sealed record FitFocus(string? Species, string? Place, string? Batch)
{
    /// <summary>Whether a board belongs to it.</summary>
    public bool Has(Board board) =>
        (Species is null || board.Species == Species) && (Place is null || board.Place == Place) && (Batch is null || board.Batch == Batch);
}
