namespace Offcuts.Domain;

/// <summary>Something that a yard turned out not to have.</summary>
/// <param name="What">Id or name of an offer, or a supplier; null for all offers.</param>
/// <param name="Length">The length that is not there; null for all lengths.</param>
public sealed record Unavailable(string? What, Length? Length)
{
    /// <summary>What is left of the offers without it.</summary>
    public IReadOnlyList<Offer> From(IReadOnlyList<Offer> offers) => [.. offers.Select(offer => Means(offer) ? Without(offer) : offer).OfType<Offer>()];

    /// <summary>Whether it leaves out anything of the offers.</summary>
    public bool Concerns(IReadOnlyList<Offer> offers) =>
        offers.Any(offer => Means(offer) && (Length is not { } length || OfferSize.Of(offer).Any(size => size.Size.Length == length)));

    private bool Means(Offer offer) => What is not { } what || offer.Id.Equals(what, StringComparison.OrdinalIgnoreCase)
        || string.Equals(offer.Name, what, StringComparison.OrdinalIgnoreCase) || Slug.Of(offer.Supplier) == Slug.Of(what);

    private Offer? Without(Offer offer)
    {
        if (Length is not { } length)
        {
            return null;
        }

        return offer.Form switch
        {
            ByThePiece piece => piece.Length == length ? null : offer,
            ByRunningLength running => Left(running.Lengths, length) is { Count: > 0 } left ? offer with { Form = running with { Lengths = left } } : null,
            ByVolume volume => Left(volume.Lengths, length) is { Count: > 0 } left ? offer with { Form = volume with { Lengths = left } } : null,
            _ => throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer)),
        };
    }

    private static List<Length> Left(IReadOnlyList<Length> lengths, Length gone) => [.. lengths.Where(length => length != gone)];
}
