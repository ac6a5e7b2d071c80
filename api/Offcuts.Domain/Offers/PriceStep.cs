namespace Offcuts.Domain;

/// <summary>A lower price for whoever buys much of an offer. It is the price of all that is bought of it, in all sizes together.</summary>
/// <param name="From">From how many units of the offer's form on: pieces, running units or units of volume.</param>
/// <param name="Price">The price of one unit from there on.</param>
public sealed record PriceStep(decimal From, Money Price)
{
    /// <summary>More than a workshop ever buys of one offer.</summary>
    public const decimal MostFrom = 1_000_000;
}
