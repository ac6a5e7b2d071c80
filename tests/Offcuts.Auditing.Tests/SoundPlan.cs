using Offcuts.Domain;

namespace Offcuts.Auditing.Tests;

/// <summary>
/// A small shop and a sound plan for it, laid out by hand. In millimetres: kerf 3, blanks 10 longer and 5 wider than finished, keep size
/// 100 x 40. Board A gives two rails and a leftover over a knot's other side; a bought board gives the two strips of a panel.
/// </summary>
internal static class SoundPlan
{
    public static PlanningProblem Problem { get; } = new()
    {
        Shop = new Shop
        {
            Kerf = Mm(3),
            Rough = new Allowances(Mm(10), Mm(5), Mm(5)),
            Surfaced = new Allowances(Mm(10), Mm(5), Mm(2)),
            PanelOversize = Mm(6),
            SeamAllowance = Mm(3),
            PlanerWidth = Mm(300),
            JointerWidth = Mm(200),
            NarrowestStrip = Mm(40),
            WidestStrip = Mm(150),
            Keep = new Dimensions(Mm(12), Mm(40), Mm(100)),
        },
        Design = new Design
        {
            Name = "stool",
            Parts = [new Part { Name = "rail", Quantity = 2, Finished = Size(20, 45, 290), Species = ["white-ash"], Group = "frame" }],
            Panels = [new Panel { Name = "seat", Finished = Size(20, 184, 390), Species = ["white-ash", "black-cherry"], Group = "frame" }],
            Groups = [new FinishGroup("frame", true, [])],
            Items = [new BoughtItem("screws", 2, new Money(150))],
        },
        Stock =
        [
            new Board
            {
                Id = "A", Species = "white-ash", Size = Size(25, 103, 600), LoggedAt = new DateTimeOffset(2026, 6, 1, 0, 0, 0, TimeSpan.Zero),
                Defects = [new Defect("knot", At(580, 60, 10, 10))],
            },
        ],
        Offers =
        [
            new Offer
            {
                Id = "yard/ash", Supplier = "yard", Species = "white-ash", Thickness = Mm(25), Form = new ByThePiece(Mm(203), Mm(400), new Money(1000)),
                Available = 2,
            },
        ],
        Today = new DateOnly(2026, 6, 1),
    };

    /// <summary>
    /// Board A, 600 x 103: a crosscut at 300, the first section ripped at 50 to two rails; the rest, 297 long, crosscut at 240 for a
    /// leftover clear of the knot. The bought board, 400 x 203: ripped at 100 to two strips.
    /// </summary>
    public static Plan Sound { get; } = new()
    {
        Status = PlanStatus.Feasible,
        Boards =
        [
            new BoardCut
            {
                Number = 1, BoardId = "A", Kind = BoardKind.Solid, Species = "white-ash", Surface = Surface.Rough, Size = Size(25, 103, 600),
                Defects = Problem.Stock[0].Defects, FirstCut = FirstCut.Crosscut,
                Cuts =
                [
                    new SawCut(1, FirstCut.Crosscut, At(300, 0, 3, 103)),
                    new SawCut(2, FirstCut.Rip, At(0, 50, 300, 3)),
                    new SawCut(3, FirstCut.Crosscut, At(543, 0, 3, 103)),
                ],
                Pieces =
                [
                    new PartPiece(At(0, 0, 300, 50), "rail", 1, false),
                    new PartPiece(At(0, 53, 300, 50), "rail", 2, false),
                    new LeftoverPiece(At(303, 0, 240, 103)) { Ends = Ends.BothSound },
                    new WastePiece(At(546, 0, 54, 103)),
                ],
            },
            new BoardCut
            {
                Number = 2, OfferId = "yard/ash", Kind = BoardKind.Solid, Species = "white-ash", Surface = Surface.Rough, Size = Size(25, 203, 400),
                FirstCut = FirstCut.Rip,
                Cuts = [new SawCut(1, FirstCut.Rip, At(0, 100, 400, 3))],
                Pieces =
                [
                    new StripPiece(At(0, 0, 400, 100), "seat", 1, 1, 1, Mm(95)),
                    new StripPiece(At(0, 103, 400, 100), "seat", 1, 1, 2, Mm(95)),
                ],
            },
        ],
        GlueUps = [new GlueUp("seat", 1, "white-ash", [new SubPanel(1, Mm(190), [new StripPlace(1, 2, Mm(95)), new StripPlace(2, 2, Mm(95))])])],
        Purchases = [new Purchase(OfferSize.Of(Problem.Offers[0])[0], 1)],
        WoodCost = new Money(1000),
        ItemCost = new Money(300),
        WoodBound = new Money(900),
        WorthConsumed = Worth.Of(Size(25, 103, 600), new Money(600), Problem.Shop.KeptOf("white-ash")),
        WorthReturned = Worth.Of(Size(25, 103, 240), new Money(600), Problem.Shop.KeptOf("white-ash")),
        Run = new PlanRun(1, TimeSpan.FromSeconds(1), TimeSpan.Zero, TimeSpan.Zero, true, "by hand"),
    };

    /// <summary>The plan with one of its boards (from 1) changed.</summary>
    public static Plan With(int board, Func<BoardCut, BoardCut> change) =>
        Sound with { Boards = [.. Sound.Boards.Select(cut => cut.Number == board ? change(cut) : cut)] };

    /// <summary>The plan with one piece (from 0) of a board changed.</summary>
    public static Plan WithPiece(int board, int piece, Func<Piece, Piece> change) => With(board, cut => cut with
    {
        Pieces = [.. cut.Pieces.Select((each, index) => index == piece ? change(each) : each)],
    });

    public static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);

    public static Rect At(int x, int y, int length, int width) => new(Mm(x), Mm(y), Mm(length), Mm(width));

    private static Dimensions Size(int thickness, int width, int length) => new(Mm(thickness), Mm(width), Mm(length));
}
