namespace Offcuts.Domain;

/// <summary>One size in which an offer can be bought, with its price.</summary>
/// <param name="Offer">The offer.</param>
/// <param name="Size">The size of the piece.</param>
/// <param name="Price">What one piece costs, before any price step: rounded up to the next minor unit, so that a plan never promises too little.</param>
public sealed record OfferSize(Offer Offer, Dimensions Size, Money Price)
{
    private static readonly Length Foot = Length.FromInches(12);
    private static readonly Length Metre = Length.FromMillimetres(1000);

    /// <summary>The price of one piece of a size by an offer's form, whether or not the offer lists the size.</summary>
    public static Money PriceOf(Offer offer, Dimensions size) => offer.Form switch
    {
        ByThePiece piece => piece.PricePerPiece,
        ByRunningLength running => RunningPrice(running, size.Length),
        ByVolume volume => Sized(offer, volume, size).Price,
        _ => throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer)),
    };

    /// <summary>All sizes of an offer, in the order in which it lists them (widths first, then lengths).</summary>
    public static IReadOnlyList<OfferSize> Of(Offer offer) => offer.Form switch
    {
        ByThePiece piece => [new(offer, new(offer.Thickness, piece.Width, piece.Length), piece.PricePerPiece)],
        ByRunningLength running => [.. running.Lengths.Select(length =>
            new OfferSize(offer, new(offer.Thickness, running.Width, length), RunningPrice(running, length)))],
        ByVolume volume => [.. volume.Widths.SelectMany(width => volume.Lengths.Select(length =>
            Sized(offer, volume, new(offer.Thickness, width, length))))],
        _ => throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer)),
    };

    private static Money RunningPrice(ByRunningLength form, Length length)
    {
        var unit = form.Unit == RunningUnit.Foot ? Foot : Metre;
        return RoundUp((decimal)form.Price.MinorUnits * length.Ticks / unit.Ticks);
    }

    private static OfferSize Sized(Offer offer, ByVolume form, Dimensions size)
    {
        var units = form.Unit == VolumeUnit.BoardFoot ? BoardMeasure.BoardFeet(size) : BoardMeasure.CubicMetres(size);
        return new(offer, size, RoundUp(form.Price.MinorUnits * units));
    }

    private static Money RoundUp(decimal minorUnits) => new((long)decimal.Ceiling(minorUnits));
}
