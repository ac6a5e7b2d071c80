using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>A rack of boards and a library of designs that want different things of it.</summary>
/// <param name="Shop">The stock, the offers and the shop; its design is the first of the library.</param>
/// <param name="Designs">The designs, with 5 part types and more.</param>
public sealed record RandomLibrary(PlanningProblem Shop, IReadOnlyList<SavedDesign> Designs)
{
    private static readonly string[] Species = ["white-ash", "black-cherry", "black-walnut", "white-oak", "hard-maple", "yellow-poplar"];

    /// <summary>The library of a seed. Each design accepts three of six species; what the rack lacks may be had of the yard, but not of every species without limit.</summary>
    public static RandomLibrary Create(int seed, int boards, int designs, int mostParts = 40)
    {
        var dice = new Dice(seed, metric: false);
        var kind = new ShopKind(ShopScale.Large, Boards: boards);
        var saved = Enumerable.Range(1, designs).Select(number =>
        {
            var accepted = Enumerable.Range(0, 3).Select(step => Species[(number + step) % Species.Length]).ToList();
            return new SavedDesign($"design-{number:000}", "", RandomDesigns.Create(dice, kind with { Parts = dice.From(5, mostParts) }, accepted));
        }).ToList();
        return new RandomLibrary(
            new PlanningProblem
            {
                Stock = RandomStock.Boards(dice, kind, Species),
                Offers = RandomStock.Offers(dice, kind with { MustBuy = true }, Species),
                Design = saved[0].Design,
                Shop = new Shop(),
                Today = RandomShops.Today,
            },
            saved);
    }
}
