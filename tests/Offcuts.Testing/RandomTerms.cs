using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random terms of the suppliers of a random shop, price steps of their offers, and what a further stop must save.</summary>
public static class RandomTerms
{
    /// <summary>The shop with terms; the same seed gives the same.</summary>
    /// <param name="problem">The shop.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="minimums">Whether there are minimum orders too.</param>
    public static PlanningProblem Add(PlanningProblem problem, int seed, bool minimums = true)
    {
        var dice = new Dice(seed, metric: false);
        return problem with
        {
            Shop = problem.Shop with { SecondStop = new Money(dice.Chance(2) ? dice.From(1, 40) * 100 : 0) },
            Terms = [.. problem.Offers.Select(offer => offer.Supplier).Distinct().Select(supplier => new SupplierTerms(supplier)
            {
                Delivery = new Money(dice.Chance(2) ? dice.From(1, 60) * 100 : 0),
                MinimumOrder = new Money(minimums && dice.Chance(2) ? dice.From(10, 200) * 100 : 0),
            })],
            Offers = [.. problem.Offers.Select(offer => dice.Chance(2) ? offer : offer with { Steps = Steps(offer, dice) })],
        };
    }

    private static List<PriceStep> Steps(Offer offer, Dice dice)
    {
        var price = StepPrices.UnitPrice(offer).MinorUnits;
        var from = offer.Form switch
        {
            ByThePiece => 2m,
            ByRunningLength { Unit: RunningUnit.Foot } => dice.From(8, 16),
            ByRunningLength => dice.From(3, 5),
            _ => dice.From(5, 20),
        };
        var first = new PriceStep(from, new Money(price * dice.From(80, 99) / 100));
        return dice.Chance(2) ? [first] : [first, new PriceStep(from * 2, new Money(price * dice.From(60, 79) / 100))];
    }
}
