using Xunit;

namespace Offcuts.Domain.Tests;

public class RulesTests
{
    private static readonly Dimensions Size = SizeText.Parse("3/4 x 5 x 36", DisplayUnit.Inch);
    private static readonly Part Leg = new() { Name = "Leg", Finished = Size, Species = ["black-walnut"] };
    private static readonly Panel Top = new() { Name = "Top", Finished = Size, Species = ["black-walnut"] };
    private static readonly Design Stool = new() { Name = "Stool", Parts = [Leg], Panels = [Top] };
    private static readonly NewBoard Board = new() { Species = "black-walnut", Size = Size };
    private static readonly Offer Ash = new()
    {
        Id = "mill/ash",
        Supplier = "Mill",
        Species = "white-ash",
        Thickness = Length.FromInches(1),
        Form = new ByThePiece(Length.FromInches(6), Length.FromInches(96), new Money(100)),
    };

    public static TheoryData<string, Design, string> BadDesigns => new()
    {
        { "no name", Stool with { Name = " " }, "#/name" },
        { "long name", Stool with { Name = new string('a', 81) }, "#/name" },
        { "control character", Stool with { Name = "a\u001b[31m" }, "#/name" },
        { "an empty tag", Stool with { Tags = ["shop", " "] }, "#/tags/1" },
        { "a tag twice", Stool with { Tags = ["shop", "Shop"] }, "#/tags/1" },
        { "too many tags", Stool with { Tags = [.. Enumerable.Range(0, 21).Select(i => $"t{i}")] }, "#/tags" },
        { "no hours at all", Stool with { Hours = 0 }, "#/hours" },
        { "too many hours", Stool with { Hours = 10_000.5m }, "#/hours" },
        { "nothing in it", new Design { Name = "Stool" }, "#" },
        { "no quantity", Stool with { Parts = [Leg with { Quantity = 0 }] }, "#/parts/0/quantity" },
        { "too many", Stool with { Parts = [Leg with { Quantity = 10_001 }] }, "#/parts/0/quantity" },
        { "no width", Stool with { Parts = [Leg with { Finished = Size with { Width = Length.Zero } }] }, "#/parts/0/size" },
        { "too long", Stool with { Parts = [Leg with { Finished = Size with { Length = Length.FromTicks(Length.MaxTicks + 1) } }] }, "#/parts/0/size" },
        { "quantity reversed", Stool with { Parts = [Leg with { Quantity = 3, MostQuantity = 2 }] }, "#/parts/0/quantity" },
        { "too many at most", Stool with { Parts = [Leg with { MostQuantity = 10_001 }] }, "#/parts/0/quantity" },
        { "fewer spares than none", Stool with { Parts = [Leg with { Spares = -1 }] }, "#/parts/0/spares" },
        { "too many spares", Stool with { Parts = [Leg with { Spares = 101 }] }, "#/parts/0/spares" },
        { "no span", Stool with { Parts = [Leg with { Spacing = new(Length.Zero, true) }] }, "#/parts/0/spacing" },
        { "one piece without a gap", Stool with { Parts = [Leg with { Spacing = new(Size.Length, false) }] }, "#/parts/0/spacing" },
        { "wider than the span", Stool with { Parts = [Leg with { MostQuantity = 8, Spacing = new(Size.Length, true) }] }, "#/parts/0/spacing" },
        { "range reversed", Stool with { Parts = [Leg with { Most = Size with { Width = Length.FromInches(4) } }] }, "#/parts/0/size" },
        { "range without end", Stool with { Parts = [Leg with { Most = Size with { Length = Length.FromTicks(Length.MaxTicks + 1) } }] }, "#/parts/0/size" },
        { "a name twice", Stool with { Panels = [Top with { Name = "Leg" }] }, "#/panels/0/name" },
        { "no species", Stool with { Parts = [Leg with { Species = [] }] }, "#/parts/0/species" },
        { "no such group", Stool with { Parts = [Leg with { Group = "seat" }] }, "#/parts/0/group" },
        { "a group twice", Stool with { Groups = [new("a", true, []), new("a", true, [])] }, "#/groups/1/name" },
        { "strips reversed", Stool with { Panels = [Top with { NarrowestStrip = Size.Width, WidestStrip = Size.Thickness }] }, "#/panels/0/strips" },
        { "strip of no width", Stool with { Panels = [Top with { NarrowestStrip = Length.Zero }] }, "#/panels/0/strips" },
        { "negative price", Stool with { Items = [new("Screw", 1, new Money(-1))] }, "#/items/0/price" },
        { "too many parts", Stool with { Parts = [.. Enumerable.Range(0, 2001).Select(i => Leg with { Name = $"P{i}" })] }, "#/parts" },
    };

    public static TheoryData<string, NewBoard, string> BadBoards => new()
    {
        { "no species", Board with { Species = "" }, "#/species" },
        { "no thickness", Board with { Size = Size with { Thickness = Length.Zero } }, "#/size" },
        { "none of it", Board with { Quantity = 0 }, "#/quantity" },
        { "long place", Board with { Place = new string('a', 201) }, "#/place" },
        { "long note", Board with { Note = new string('a', 2001) }, "#/note" },
        { "defect off the end", Board with { Defects = [Defect(30, 0, 7, 1)] }, "#/defects/0" },
        { "defect off the edge", Board with { Defects = [Defect(0, 4, 1, 2)] }, "#/defects/0" },
        { "defect before the end", Board with { Defects = [Defect(-1, 0, 2, 1)] }, "#/defects/0" },
        { "no moisture at all", Board with { Moisture = new MoistureReading(0) }, "#/moisture" },
        { "more water than wood holds", Board with { Moisture = new MoistureReading(300.1m) }, "#/moisture" },
        { "defect of no size", Board with { Defects = [Defect(1, 1, 0, 1)] }, "#/defects/0" },
        { "too many defects", Board with { Defects = [.. Enumerable.Repeat(Defect(0, 0, 1, 1), 101)] }, "#/defects" },
    };

    public static TheoryData<string, Offer, string> BadOffers => new()
    {
        { "no id", Ash with { Id = "" }, "#/id" },
        { "no thickness", Ash with { Thickness = Length.Zero }, "#/thickness" },
        { "fewer than none", Ash with { Available = -1 }, "#/available" },
        { "negative price", Ash with { Form = new ByThePiece(Size.Width, Size.Length, new Money(-1)) }, "#/piece" },
        { "no lengths", Ash with { Form = new ByRunningLength(Size.Width, [], new Money(1), RunningUnit.Foot) }, "#/running/lengths" },
        { "a width of zero", Ash with { Form = new ByVolume([Length.Zero], [Size.Length], new Money(1), VolumeUnit.BoardFoot) }, "#/random/widths/0" },
        { "a length twice", Ash with { Form = new ByVolume([Size.Width], [Size.Length, Size.Length], new Money(1), VolumeUnit.BoardFoot) }, "#/random/lengths" },
        { "a sheet by the foot", Ash with { Kind = BoardKind.Sheet, Form = new ByRunningLength(Size.Width, [Size.Length], new Money(1), RunningUnit.Foot) }, "#" },
    };

    public static TheoryData<string, Shop, string> BadShops => new()
    {
        { "no currency", new Shop { Currency = "dollar" }, "#/currency" },
        { "kerf below zero", new Shop { Kerf = Length.FromTicks(-1) }, "#/kerf" },
        { "kerf above an inch", new Shop { Kerf = Length.FromTicks(Length.TicksPerInch + 1) }, "#/kerf" },
        { "allowance below zero", new Shop { Rough = new(Length.FromTicks(-1), Length.Zero, Length.Zero) }, "#/rough/length" },
        { "allowance above a foot", new Shop { Sheet = new(Length.Zero, Length.FromInches(12, 1, 64), Length.Zero) }, "#/sheet/width" },
        { "planed sheets", new Shop { Sheet = new(Length.Zero, Length.Zero, Length.FromTicks(1)) }, "#/sheet" },
        { "no planer", new Shop { PlanerWidth = Length.Zero }, "#/planerWidth" },
        { "a planer as wide as a house", new Shop { PlanerWidth = Length.FromInches(120, 1, 64) }, "#/planerWidth" },
        { "a resaw as high as a house", new Shop { ResawHeight = Length.FromInches(120, 1, 64) }, "#/resawHeight" },
        { "no blank long enough", new Shop { ShortestAtJointer = Length.FromInches(120, 1, 64) }, "#/shortestAtJointer" },
        { "strips reversed", new Shop { NarrowestStrip = Length.FromInches(7) }, "#/narrowestStrip" },
        { "seam as wide as the planer", new Shop { PlanerWidth = Length.FromInches(1), SeamAllowance = Length.FromInches(1) }, "#/seamAllowance" },
        { "air of no humidity", new Shop { Climate = new(4, 60, 21) }, "#/climate/lowHumidity" },
        { "air of all humidity", new Shop { Climate = new(30, 96, 21) }, "#/climate/highHumidity" },
        { "seasons reversed", new Shop { Climate = new(60, 30, 21) }, "#/climate/lowHumidity" },
        { "an oven", new Shop { Climate = new(30, 60, 51) }, "#/climate/celsius" },
        { "a reading for ever", new Shop { ReadingDays = 3651 }, "#/readingDays" },
        { "no panel is wide", new Shop { WidePanel = Length.Zero }, "#/widePanel" },
        { "keep nothing", new Shop { Keep = default }, "#/keep" },
    };

    [Fact]
    public void What_is_right_has_no_faults()
    {
        Assert.Empty(DesignRules.Check(Stool));
        Assert.Empty(DesignRules.Check(Stool with
        {
            Parts = [Leg with { Species = [], Group = "all", Quantity = 10_000 }],
            Groups = [new("all", true, ["hardwood"])],
        }));
        Assert.Empty(BoardRules.Check(Board with { Defects = [Defect(35, 4, 1, 1)], Quantity = 10_000, Place = new string('a', 200) }));
        Assert.Empty(OfferRules.Check(Ash with { Available = 0 }));
        Assert.Empty(ShopRules.Check(new Shop()));
        Assert.Empty(ShopRules.Check(new Shop { Kerf = Length.Zero, ShortestAtPlaner = Length.Zero }));
        var most = Length.FromInches(120);
        Assert.Empty(ShopRules.Check(new Shop { PlanerWidth = most, JointerWidth = most, WidestStrip = most, ResawHeight = most, ShortestAtPlaner = most }));
    }

    [Theory]
    [MemberData(nameof(BadDesigns), DisableDiscoveryEnumeration = true)]
    public void A_bad_design_is_told_where(string what, Design design, string pointer) => HasFault(what, pointer, DesignRules.Check(design));

    [Theory]
    [MemberData(nameof(BadBoards), DisableDiscoveryEnumeration = true)]
    public void A_bad_board_is_told_where(string what, NewBoard board, string pointer) => HasFault(what, pointer, BoardRules.Check(board));

    [Theory]
    [MemberData(nameof(BadOffers), DisableDiscoveryEnumeration = true)]
    public void A_bad_offer_is_told_where(string what, Offer offer, string pointer) => HasFault(what, pointer, OfferRules.Check(offer));

    [Theory]
    [MemberData(nameof(BadShops), DisableDiscoveryEnumeration = true)]
    public void A_bad_shop_is_told_where(string what, Shop shop, string pointer) => HasFault(what, pointer, ShopRules.Check(shop));

    private static void HasFault(string what, string pointer, IReadOnlyList<InputFault> faults)
    {
        Assert.True(faults.Any(fault => fault.Pointer == pointer), $"{what}: {string.Join("; ", faults)}");
        Assert.All(faults, fault => Assert.EndsWith(".", fault.Detail, StringComparison.Ordinal));
    }

    private static Defect Defect(int x, int y, int length, int width) =>
        new("knot", new Rect(Length.FromInches(x), Length.FromInches(y), Length.FromInches(length), Length.FromInches(width)));
}
