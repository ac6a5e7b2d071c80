using Offcuts.Domain;

namespace Offcuts.Pictures.Tests;

/// <summary>A plan made by hand that has one of everything: both first cuts, a panel of two sub-panels, a sheet, defects, tiny pieces.</summary>
internal static class Sample
{
    public const string LegName = "Leg <a> & \"b\"";

    private static readonly Length Kerf = In(0, 1, 8);

    public static Length In(long whole, long numerator = 0, long denominator = 1) => Length.FromInches(whole, numerator, denominator);

    public static PlanDocument Document(DisplayUnit unit = DisplayUnit.Inch, string legName = LegName) => new(
        Plan(legName), Problem(unit, legName), "7", "3", new DateTimeOffset(2026, 3, 4, 15, 20, 0, TimeSpan.Zero));

    private static PlanningProblem Problem(DisplayUnit unit, string legName) => new()
    {
        Shop = new Shop { Unit = unit },
        Stock =
        [
            new Board
            {
                Id = "K7M", Species = "black-walnut", Size = new(In(1), In(5), In(96)), Place = "rack <A>", LoggedAt = DateTimeOffset.UnixEpoch,
                Defects = [new("knot & nail", new Rect(In(92), In(1), In(2), In(2)))],
            },
            new Board { Id = "P2R", Kind = BoardKind.Sheet, Species = "baltic-birch-plywood", Size = new(In(0, 1, 2), In(49), In(97)), LoggedAt = DateTimeOffset.UnixEpoch },
        ],
        Offers = [Offer],
        Design = new Design
        {
            Name = "Stool & Co <1>",
            Parts =
            [
                new Part { Name = legName, Quantity = 2, Finished = new(In(0, 13, 16), In(2), In(30)) },
                new Part { Name = "Peg", Quantity = 2, Finished = new(In(0, 3, 4), In(0, 1, 2), In(1)) },
                new Part { Name = "Back", Finished = new(In(0, 1, 2), In(30), In(20)), Grain = Grain.Free },
            ],
            Panels = [new Panel { Name = "Top", Finished = new(In(0, 3, 4), In(15), In(40)) }],
            Items = [new BoughtItem("Screw <8>", 4, new Money(25), "Nuts & Bolts"), new BoughtItem("Oil", 1, new Money(900))],
        },
    };

    private static Offer Offer { get; } = new()
    {
        Id = "yard/walnut",
        Supplier = "Yard & Sons",
        Name = "Walnut FAS",
        Species = "black-walnut",
        Thickness = In(1),
        Form = new ByVolume([In(9)], [In(96)], new Money(1250), VolumeUnit.BoardFoot),
    };

    private static Plan Plan(string legName) => new()
    {
        Status = PlanStatus.Incomplete,
        Boards = [Ripped(legName), Bought, Sheet],
        GlueUps = [new("Top", 1, "black-walnut", [
            new(1, In(7, 3, 4), [new(1, 2, In(4)), new(2, 2, In(4))]),
            new(2, In(7, 3, 4), [new(1, 1, In(2)), new(2, 2, In(6))])])],
        Purchases = [new Purchase(OfferSize.Of(Offer)[0], 1)],
        Missing = [new MissingPart("Door <x>", 2, MissingReason.TooNarrow, "K7M", In(12), In(5))],
        Warnings = [new PlanWarning(WarningKind.ShortForPlaner, "Peg", In(1, 1, 2), In(12)), new PlanWarning(WarningKind.Defects, "K7M")],
        WoodCost = new(7500),
        ItemCost = new(1000),
        WoodBound = new(7000),
        WorthConsumed = new(3000),
        WorthReturned = new(450),
        Run = new PlanRun(1, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(0.1), true, "1"),
    };

    // Ripped first; the end with the knot is waste, and two pegs are too small for any words.
    private static BoardCut Ripped(string legName) => new()
    {
        Number = 1,
        BoardId = "K7M",
        Kind = BoardKind.Solid,
        Species = "black-walnut",
        Surface = Surface.Rough,
        Size = new(In(1), In(5), In(96)),
        Defects = [new("knot & nail", new Rect(In(92), In(1), In(2), In(2)))],
        FirstCut = FirstCut.Rip,
        Cuts =
        [
            new(1, FirstCut.Rip, new(Length.Zero, In(2, 1, 4), In(96), Kerf)),
            new(2, FirstCut.Crosscut, new(In(30, 1, 2), Length.Zero, Kerf, In(2, 1, 4))),
            new(3, FirstCut.Crosscut, new(In(61, 1, 8), Length.Zero, Kerf, In(2, 1, 4))),
            new(4, FirstCut.Crosscut, new(In(62, 5, 8), Length.Zero, Kerf, In(2, 1, 4))),
            new(5, FirstCut.Rip, new(In(61, 1, 4), In(0, 3, 4), In(1, 3, 8), Kerf)),
            new(6, FirstCut.Rip, new(In(61, 1, 4), In(1, 5, 8), In(1, 3, 8), Kerf)),
            new(7, FirstCut.Crosscut, new(In(40, 1, 2), In(2, 3, 8), Kerf, In(2, 5, 8))),
            new(8, FirstCut.Crosscut, new(In(90), In(2, 3, 8), Kerf, In(2, 5, 8))),
        ],
        Pieces =
        [
            new PartPiece(new(Length.Zero, Length.Zero, In(30, 1, 2), In(2, 1, 4)), legName, 1, false),
            new PartPiece(new(In(30, 5, 8), Length.Zero, In(30, 1, 2), In(2, 1, 4)), legName, 2, false),
            new PartPiece(new(In(61, 1, 4), Length.Zero, In(1, 3, 8), In(0, 3, 4)), "Peg", 1, false),
            new PartPiece(new(In(61, 1, 4), In(0, 7, 8), In(1, 3, 8), In(0, 3, 4)), "Peg", 2, false),
            new WastePiece(new(In(61, 1, 4), In(1, 3, 4), In(1, 3, 8), In(0, 1, 2))),
            new WastePiece(new(In(62, 3, 4), Length.Zero, In(33, 1, 4), In(2, 1, 4))),
            new StripPiece(new(Length.Zero, In(2, 3, 8), In(40, 1, 2), In(2, 5, 8)), "Top", 1, 2, 1, In(2)),
            new LeftoverPiece(new(In(40, 5, 8), In(2, 3, 8), In(49, 3, 8), In(2, 5, 8))),
            new WastePiece(new(In(90, 1, 8), In(2, 3, 8), In(5, 7, 8), In(2, 5, 8))),
        ],
    };

    private static BoardCut Bought { get; } = new()
    {
        Number = 2,
        OfferId = "yard/walnut",
        Kind = BoardKind.Solid,
        Species = "black-walnut",
        Surface = Surface.Rough,
        Size = new(In(1), In(9), In(96)),
        FirstCut = FirstCut.Crosscut,
        Cuts =
        [
            new(1, FirstCut.Crosscut, new(In(40, 1, 2), Length.Zero, Kerf, In(9))),
            new(2, FirstCut.Crosscut, new(In(81, 1, 8), Length.Zero, Kerf, In(9))),
            new(3, FirstCut.Rip, new(Length.Zero, In(4, 1, 4), In(40, 1, 2), Kerf)),
            new(4, FirstCut.Rip, new(Length.Zero, In(8, 5, 8), In(40, 1, 2), Kerf)),
            new(5, FirstCut.Rip, new(In(40, 5, 8), In(2, 5, 8), In(40, 1, 2), Kerf)),
        ],
        Pieces =
        [
            new StripPiece(new(Length.Zero, Length.Zero, In(40, 1, 2), In(4, 1, 4)), "Top", 1, 1, 1, In(4)),
            new StripPiece(new(Length.Zero, In(4, 3, 8), In(40, 1, 2), In(4, 1, 4)), "Top", 1, 1, 2, In(4)),
            new WastePiece(new(Length.Zero, In(8, 3, 4), In(40, 1, 2), In(0, 1, 4))),
            new WastePiece(new(In(40, 5, 8), Length.Zero, In(40, 1, 2), In(2, 5, 8))),
            new StripPiece(new(In(40, 5, 8), In(2, 3, 4), In(40, 1, 2), In(6, 1, 4)), "Top", 1, 2, 2, In(6)),
            new LeftoverPiece(new(In(81, 1, 4), Length.Zero, In(14, 3, 4), In(9))),
        ],
    };

    // The back lies across the sheet: its length of 30 runs along the sheet's width.
    private static BoardCut Sheet { get; } = new()
    {
        Number = 3,
        BoardId = "P2R",
        Kind = BoardKind.Sheet,
        Species = "baltic-birch-plywood",
        Surface = Surface.Surfaced,
        Size = new(In(0, 1, 2), In(49), In(97)),
        FirstCut = FirstCut.Crosscut,
        Cuts =
        [
            new(1, FirstCut.Crosscut, new(In(30), Length.Zero, Kerf, In(49))),
            new(2, FirstCut.Rip, new(Length.Zero, In(20), In(30), Kerf)),
        ],
        Pieces =
        [
            new PartPiece(new(Length.Zero, Length.Zero, In(30), In(20)), "Back", 1, true),
            new LeftoverPiece(new(Length.Zero, In(20, 1, 8), In(30), In(28, 7, 8))),
            new LeftoverPiece(new(In(30, 1, 8), Length.Zero, In(66, 7, 8), In(49))),
        ],
    };
}
