using Offcuts.Domain;

namespace Offcuts.Planning.Ordering;

/// <summary>From which suppliers to buy, and which price step to reach of each offer that has steps.</summary>
/// <param name="Suppliers">The suppliers among those for which it matters; exactly from these something is bought.</param>
/// <param name="Steps">By offer: 0 for the price before any step, n for the n-th step.</param>
internal sealed record OrderChoice(IReadOnlySet<string> Suppliers, IReadOnlyList<int> Steps)
{
    /// <summary>Whether every plan of the other choice could be made here, for no more money on wood: as many suppliers at least, at prices at most.</summary>
    public bool Covers(OrderChoice other) => other.Suppliers.IsSubsetOf(Suppliers) && Steps.Zip(other.Steps).All(pair => pair.First >= pair.Second);

    /// <summary>The offers at the prices of the choice; what is of other suppliers becomes dearer by a sum that no good plan spends.</summary>
    /// <remarks>
    /// Dear rather than gone: then a choice whose suppliers cannot give everything has plans all the same, and its bound says that they cost too much.
    /// A plan that buys there nevertheless counts as what it is.
    /// </remarks>
    /// <param name="terms">What matters.</param>
    /// <param name="surcharge">The sum.</param>
    public IReadOnlyList<Offer> Offers(OrderTerms terms, Money surcharge) => [.. terms.Problem.Offers.Select(offer =>
    {
        var at = terms.Stepped.IndexOf(offer);
        var priced = at < 0 ? offer : StepPrices.At(offer, terms.PriceOf(at, Steps[at]));
        return terms.Matters(offer) && !Suppliers.Contains(Slug.Of(offer.Supplier)) ? Dearer(priced, surcharge) : priced;
    })];

    private static Offer Dearer(Offer offer, Money surcharge)
    {
        var least = OfferSize.Of(offer).Min(StepPrices.Units);
        return StepPrices.At(offer, StepPrices.UnitPrice(offer) + new Money((long)decimal.Ceiling(surcharge.MinorUnits / least)));
    }
}
