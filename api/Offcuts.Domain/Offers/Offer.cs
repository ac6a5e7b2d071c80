namespace Offcuts.Domain;

/// <summary>Something that a supplier sells.</summary>
public sealed record Offer
{
    /// <summary>Id, unique among all offers at hand, for instance <c>riverbend/ash-4-4</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Who sells it.</summary>
    public required string Supplier { get; init; }

    /// <summary>The supplier's name as a person writes it; null where <see cref="Supplier"/> says it.</summary>
    public string? SupplierName { get; init; }

    /// <summary>What the supplier calls it, if that helps at the counter.</summary>
    public string? Name { get; init; }

    /// <summary>Solid wood or sheet goods.</summary>
    public BoardKind Kind { get; init; } = BoardKind.Solid;

    /// <summary>The species (for sheets: the material) by its id.</summary>
    public required string Species { get; init; }

    /// <summary>Thickness as sold: the real one for surfaced stock, 1 in for rough 4/4.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Rough, skip-planed or surfaced.</summary>
    public Surface Surface { get; init; } = Surface.Rough;

    /// <summary>What its faces are good for.</summary>
    public Appearance Appearance { get; init; } = Appearance.Clear;

    /// <summary>In which sizes it comes and how it is priced.</summary>
    public required OfferForm Form { get; init; }

    /// <summary>Lower prices for whoever buys much, each from more than the one before and for less; empty if there are none.</summary>
    public IReadOnlyList<PriceStep> Steps { get; init; } = [];

    /// <summary>How many pieces of this offer can be had in all sizes together; null for as many as wanted.</summary>
    public int? Available { get; init; }
}

/// <summary>How an offer is sized and priced: exactly one of the three forms below.</summary>
public abstract record OfferForm
{
    private protected OfferForm()
    {
    }
}

/// <summary>One fixed size at a price for the piece; also how sheets are sold.</summary>
/// <param name="Width">Width of each piece.</param>
/// <param name="Length">Length of each piece.</param>
/// <param name="PricePerPiece">Price of one piece.</param>
public sealed record ByThePiece(Length Width, Length Length, Money PricePerPiece) : OfferForm;

/// <summary>One width in several lengths, priced by running length.</summary>
/// <param name="Width">Width of each piece.</param>
/// <param name="Lengths">The lengths in stock.</param>
/// <param name="Price">Price of one running unit.</param>
/// <param name="Unit">The running unit.</param>
public sealed record ByRunningLength(Length Width, IReadOnlyList<Length> Lengths, Money Price, RunningUnit Unit) : OfferForm;

/// <summary>Random widths and lengths, priced by volume. The sizes listed are those a yard usually has.</summary>
/// <param name="Widths">Usual widths.</param>
/// <param name="Lengths">Usual lengths.</param>
/// <param name="Price">Price of one unit of volume.</param>
/// <param name="Unit">The unit of volume.</param>
public sealed record ByVolume(IReadOnlyList<Length> Widths, IReadOnlyList<Length> Lengths, Money Price, VolumeUnit Unit) : OfferForm;

/// <summary>Units of running length in which wood is priced.</summary>
public enum RunningUnit
{
    /// <summary>12 inches.</summary>
    Foot,

    /// <summary>1000 millimetres.</summary>
    Metre,
}

/// <summary>Units of volume in which wood is priced.</summary>
public enum VolumeUnit
{
    /// <summary>144 cubic inches.</summary>
    BoardFoot,

    /// <summary>A cubic metre.</summary>
    CubicMetre,
}
