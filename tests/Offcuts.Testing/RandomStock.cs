using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random racks of boards and random price lists.</summary>
internal static class RandomStock
{
    public static List<Board> Boards(Dice dice, ShopKind kind, IReadOnlyList<string> species)
    {
        var count = kind.Boards ?? kind.Scale switch
        {
            ShopScale.Smallest => dice.From(0, 2),
            ShopScale.Tiny => dice.From(0, 4),
            ShopScale.Workshop => 40,
            ShopScale.Large => 300,
            ShopScale.Huge => 10_000,
        };

        // Short boards only: some of them serve, but not for everything.
        count = kind.MustBuy && !kind.FullRack && kind.Scale == ShopScale.Workshop ? count / 3 : count;
        return [.. Enumerable.Range(1, count).Select(number => CreateBoard(dice, kind, species, number))];
    }

    public static List<Offer> Offers(Dice dice, ShopKind kind, IReadOnlyList<string> species)
    {
        var offers = new List<Offer>();
        if (!kind.MustBuy && dice.Chance(3))
        {
            return offers;
        }

        foreach (var (index, name) in species.Index())
        {
            offers.Add(new Offer
            {
                Id = $"yard/{name}-rough",
                Supplier = "yard",
                Species = name,
                Thickness = dice.Size(1.5m, 38),
                Form = new ByVolume([dice.Size(5, 130), dice.Size(7, 180)], [dice.Size(72, 1800), dice.Size(96, 2400)], new Money(650 + (index * 240)), VolumeUnit.BoardFoot),
                Available = kind.MustBuy && index == 0 ? null : dice.From(0, 4),
            });
            offers.Add(new Offer
            {
                Id = $"store/{name}-surfaced",
                Supplier = "store",
                Species = name,
                Thickness = dice.Size(0.75m, 20),
                Surface = Surface.Surfaced,
                Form = new ByRunningLength(dice.Size(5.5m, 140), [dice.Size(48, 1200), dice.Size(72, 1800)], new Money(540 + (index * 150)), RunningUnit.Foot),
                Available = dice.Chance(2) ? null : dice.From(0, 3),
            });
        }

        offers.Add(new Offer
        {
            Id = "store/birch-plywood",
            Supplier = "store",
            Kind = BoardKind.Sheet,
            Species = "birch-plywood",
            Thickness = dice.Size(0.75m, 18),
            Surface = Surface.Surfaced,
            Form = new ByThePiece(dice.Size(48, 1220), dice.Size(96, 2440), new Money(8995)),
        });
        return offers;
    }

    private static Board CreateBoard(Dice dice, ShopKind kind, IReadOnlyList<string> species, int number)
    {
        var isSheet = dice.Chance(8);
        var surfaced = isSheet || dice.Chance(3);
        var size = isSheet
            ? new Dimensions(dice.Size(0.75m, 18), dice.Between(12, 30), dice.Between(12, 48))
            : new Dimensions(
                surfaced ? dice.Size(0.75m, 20) : dice.Pick([dice.Size(1, 25), dice.Size(1.25m, 32), dice.Size(2, 50)]),
                dice.Between(2, 10), kind.MustBuy ? dice.Between(8, 30) : dice.Between(12, kind.IsSmall ? 60 : 110));
        return new Board
        {
            Id = BoardIds.FromNumber(number),
            Kind = isSheet ? BoardKind.Sheet : BoardKind.Solid,
            Species = isSheet ? "birch-plywood" : dice.Pick(species),
            Size = size,
            Quantity = dice.Chance(5) ? dice.From(2, 3) : 1,
            Surface = surfaced ? Surface.Surfaced : Surface.Rough,
            Appearance = dice.Pick([Appearance.Clear, Appearance.Clear, Appearance.SoundKnots, Appearance.Paint]),
            Defects = dice.Chance(6) ? [CreateDefect(dice, size)] : [],
            LoggedAt = new DateTimeOffset(2022 + dice.From(0, 4), 3, 1, 0, 0, 0, TimeSpan.Zero),
        };
    }

    private static Defect CreateDefect(Dice dice, Dimensions size)
    {
        var length = Length.FromTicks(size.Length.Ticks / dice.From(5, 12));
        var width = Length.FromTicks(size.Width.Ticks / dice.From(2, 6));
        return new Defect("knot", new Rect(
            Length.FromTicks((size.Length - length).Ticks * dice.From(0, 8) / 8), Length.FromTicks((size.Width - width).Ticks * dice.From(0, 8) / 8), length, width));
    }
}
