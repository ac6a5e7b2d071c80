using CsCheck;
using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random but repeatable planning problems: the same seed gives the same shop.</summary>
public static class RandomShops
{
    public static readonly DateOnly Today = new(2026, 6, 1);

    /// <summary>A shop for each seed that CsCheck draws; a failing seed is printed and can be given to <see cref="Create"/>.</summary>
    public static Gen<(int Seed, PlanningProblem Problem)> Gen(ShopScale scale) =>
        CsCheck.Gen.Int[0, int.MaxValue - 1].Select(seed => (seed, Create(seed, Kind(seed, scale))));

    /// <summary>Inch and metric shops, with enough stock and without, by turns.</summary>
    public static ShopKind Kind(int seed, ShopScale scale) => new(scale, MustBuy: seed % 2 == 1, Metric: seed % 4 >= 2);

    /// <summary>
    /// A workshop that must buy: 40 short boards in stock and 12 part types of which some are longer than any of them; what is bought can be had without limit in one species.
    /// </summary>
    public static PlanningProblem MustBuy(int seed) => Create(seed, Kind(seed, ShopScale.Workshop) with { MustBuy = true, FullRack = true });

    /// <summary>The shop of a seed.</summary>
    public static PlanningProblem Create(int seed, ShopKind kind)
    {
        var dice = new Dice(seed, kind.Metric);
        var species = new[] { "white-ash", "black-cherry", "black-walnut" }[..(kind.IsSmall ? dice.From(1, 2) : 3)];
        var shop = CreateShop(dice, kind);
        var design = RandomDesigns.Create(dice, kind, species);
        return new PlanningProblem
        {
            Shop = shop,
            Design = design,
            Stock = RandomStock.Boards(dice, kind, species),
            Offers = RandomStock.Offers(dice, kind, species),
            Rates = new WorthRates(new Money(600), new Dictionary<string, Money> { ["black-walnut"] = new Money(1250) }),
            Today = Today,
        };
    }

    private static Shop CreateShop(Dice dice, ShopKind kind)
    {
        var shop = new Shop
        {
            Unit = kind.Metric ? DisplayUnit.Millimetre : DisplayUnit.Inch,
            JointerWidth = dice.Chance(3) ? dice.Size(12, 300) : dice.Size(8, 200),
        };
        if (!kind.IsSmall)
        {
            return shop;
        }

        // Small shops try the odd settings as well.
        return shop with
        {
            Kerf = dice.Chance(5) ? Length.Zero : dice.Chance(4) ? Length.FromInches(0, 1, 4) : shop.Kerf,
            Recut = !dice.Chance(4),
            PlanerWidth = dice.Chance(4) ? dice.Size(6, 150) : shop.PlanerWidth,
            Keep = dice.Chance(3) ? new Dimensions(dice.Size(0.5m, 12), dice.Size(1, 25), dice.Size(4, 100)) : shop.Keep,
            Sheet = dice.Chance(4) ? new Allowances(dice.Size(0.25m, 6), dice.Size(0.25m, 6), Length.Zero) : shop.Sheet,
        };
    }
}
