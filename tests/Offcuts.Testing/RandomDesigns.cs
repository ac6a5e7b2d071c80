using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random designs: parts of a few thicknesses, panels, finish groups, sheet parts.</summary>
internal static class RandomDesigns
{
    public static Design Create(Dice dice, ShopKind kind, IReadOnlyList<string> species)
    {
        var (parts, panels) = kind.Parts is { } own ? (own, own / 12) : kind.Scale switch
        {
            ShopScale.Smallest => (dice.From(1, 2), dice.Chance(5) ? 1 : 0),
            ShopScale.Tiny => (dice.From(1, 3), dice.Chance(3) ? 1 : 0),
            ShopScale.Workshop => (12, 0),
            ShopScale.Large => (40, 2),
            ShopScale.Huge => (60, 2),
        };
        return new Design
        {
            Name = "random",
            Parts = [.. Enumerable.Range(1, parts).Select(number => CreatePart(dice, kind, species, number))],
            Panels = [.. Enumerable.Range(1, panels).Select(number => CreatePanel(dice, kind, species, number))],
            Groups = [new FinishGroup("show", true, species), new FinishGroup("frame", false, species)],
            Items = dice.Chance(2) ? [new BoughtItem("screws", dice.From(1, 3), new Money(450))] : [],
        };
    }

    private static Part CreatePart(Dice dice, ShopKind kind, IReadOnlyList<string> species, int number)
    {
        var isSheet = dice.Chance(6);
        return new Part
        {
            Name = $"part {number}",
            Quantity = dice.From(1, kind.Scale switch { ShopScale.Smallest => 2, ShopScale.Tiny => 3, _ => 6 }),
            Finished = isSheet
                ? new Dimensions(dice.Size(0.75m, 18), dice.Between(4, 16), dice.Between(8, 24))
                : new Dimensions(Thickness(dice), dice.Between(1, 5), dice.Between(6, kind.IsSmall ? 30 : 48)),
            Species = isSheet ? ["birch-plywood"] : Accepted(dice, species),
            Appearance = dice.Chance(4) ? Appearance.Clear : dice.Chance(4) ? Appearance.Paint : Appearance.SoundKnots,
            Grain = dice.Chance(4) ? Grain.Free : Grain.Fixed,
            Group = isSheet ? null : dice.Chance(5) ? "show" : dice.Chance(5) ? "frame" : null,
        };
    }

    private static Panel CreatePanel(Dice dice, ShopKind kind, IReadOnlyList<string> species, int number) => new()
    {
        Name = $"panel {number}",
        Quantity = dice.From(1, kind.Scale == ShopScale.Smallest ? 1 : 2),
        Finished = new Dimensions(
            dice.Size(0.75m, 20), dice.Between(5, kind.Scale switch { ShopScale.Smallest => 9, ShopScale.Tiny => 14, _ => 24 }), dice.Between(10, kind.IsSmall ? 24 : 48)),
        NarrowestStrip = dice.Chance(4) ? dice.Size(2, 50) : null,
        WidestStrip = dice.Chance(4) ? dice.Size(4, 100) : null,
        Species = Accepted(dice, species),
        Group = dice.Chance(3) ? "show" : null,
    };

    // Everything accepts the first species, so that a shop that sells it can always serve.
    private static List<string> Accepted(Dice dice, IReadOnlyList<string> species) =>
        species.Count > 1 && dice.Chance(2) ? [species[0], dice.Pick([.. species.Skip(1)])] : [species[0]];

    private static Length Thickness(Dice dice) => dice.Chance(5) ? dice.Size(1, 25) : dice.Size(0.75m, 20);
}
