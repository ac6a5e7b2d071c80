using Offcuts.Domain;
using static Offcuts.Pictures.Tests.Sample;

namespace Offcuts.Pictures.Tests;

/// <summary>
/// A plan made by hand with one of everything that a blank can be: ganged, resawn, a layer, a spare, warped, with a defect that its part tolerates.
/// </summary>
internal static class RecipeSample
{
    private static readonly Length Kerf = In(0, 1, 8);

    public static PlanDocument Document() => new(Plan, Problem, "8", "4", new DateTimeOffset(2026, 3, 4, 15, 20, 0, TimeSpan.Zero));

    private static PlanningProblem Problem { get; } = new()
    {
        Shop = new Shop { ShortBlanks = ShortBlanks.Refuse, ResawHeight = In(6) },
        Stock =
        [
            new Board
            {
                Id = "T4W", Species = "white-ash", Size = new(In(2), In(5), In(60)), LoggedAt = DateTimeOffset.UnixEpoch, Batch = "log 3",
                Warp = new Warp(In(0, 3, 8), In(0, 1, 8), default, default), Ends = new Ends(EndState.Checked, EndState.Sound),
                Defects = [new("knot", new Rect(In(28), In(1), In(2), In(1, 1, 2)))],
            },
            new Board { Id = "L2F", Species = "white-ash", Size = new(In(1), In(4), In(62)), LoggedAt = DateTimeOffset.UnixEpoch },
        ],
        Design = new Design
        {
            Name = "Plant stand",
            Parts =
            [
                new Part { Name = "Slat", Quantity = 2, MostQuantity = 4, Finished = new(In(0, 5, 8), In(4), In(20)), Most = new(In(0, 5, 8), In(5), In(20)), Tolerates = ["knot"] },
                new Part { Name = "Block", Quantity = 3, Finished = new(In(1, 1, 2), In(4), In(3)) },
                new Part { Name = "Leg", Layers = 2, Finished = new(In(1, 5, 8), In(2), In(28)) },
                new Part { Name = "Brace", Spares = 1, Finished = new(In(0, 3, 4), In(1, 3, 8), In(28)) },
            ],
        },
    };

    private static Plan Plan { get; } = new()
    {
        Status = PlanStatus.Proved,
        Boards = [Thick, Thin],
        Laminations = [new("Leg", 1, "white-ash", [new(1, 2), new(2, 2)])],
        Counts = [new PartCount("Slat", 4, 0, null), new PartCount("Brace", 1, 1, null)],
        Warnings = [new PlanWarning(WarningKind.Resawn, "Slat"), new PlanWarning(WarningKind.Laminated, "Leg")],
        WoodCost = default,
        ItemCost = default,
        WoodBound = default,
        WorthConsumed = new(2000),
        WorthReturned = new(350),
        Run = new PlanRun(1, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(0.1), true, "1"),
    };

    private static BoardCut Thick => new()
    {
        Number = 1,
        BoardId = "T4W",
        Kind = BoardKind.Solid,
        Species = "white-ash",
        Surface = Surface.Rough,
        Size = Problem.Stock[0].Size,
        Defects = Problem.Stock[0].Defects,
        FirstCut = FirstCut.Crosscut,
        Cuts =
        [
            new(1, FirstCut.Crosscut, new(In(1), Length.Zero, Kerf, In(5))),
            new(2, FirstCut.Crosscut, new(In(21, 5, 8), Length.Zero, Kerf, In(5))),
            new(3, FirstCut.Crosscut, new(In(42, 1, 4), Length.Zero, Kerf, In(5))),
            new(4, FirstCut.Crosscut, new(In(54, 3, 8), Length.Zero, Kerf, In(5))),
            new(5, FirstCut.Rip, new(In(42, 3, 8), In(4, 1, 4), In(12), Kerf)),
        ],
        Pieces =
        [
            new WastePiece(new(Length.Zero, Length.Zero, In(1), In(5))),
            new PartPiece(new(In(1, 1, 8), Length.Zero, In(20, 1, 2), In(5)), "Slat", [new(1), new(2)], false, new Recipe(1, 2, 1))
            {
                Finished = new(In(0, 5, 8), In(4, 3, 4), In(20)), Loss = new Loss(In(0, 3, 64), Length.Zero),
            },
            new PartPiece(new(In(21, 3, 4), Length.Zero, In(20, 1, 2), In(5)), "Slat", [new(3), new(4)], false, new Recipe(1, 2, 1))
            {
                Finished = new(In(0, 5, 8), In(4, 3, 4), In(20)), Loss = new Loss(In(0, 3, 64), Length.Zero), Use = PieceUse.More,
            },
            new PartPiece(new(In(42, 3, 8), Length.Zero, In(12), In(4, 1, 4)), "Block", [new(1), new(2), new(3)], false, new Recipe(3, 1, 1, Carried: true)),
            new WastePiece(new(In(42, 3, 8), In(4, 3, 8), In(12), In(0, 5, 8))),
            new LeftoverPiece(new(In(54, 1, 2), Length.Zero, In(5, 1, 2), In(5))) { Ends = new Ends(EndState.Sound, EndState.Sound) },
        ],
    };

    // The two layers of the leg one behind the other, beside them the brace and its spare.
    private static BoardCut Thin => new()
    {
        Number = 2,
        BoardId = "L2F",
        Kind = BoardKind.Solid,
        Species = "white-ash",
        Surface = Surface.Rough,
        Size = Problem.Stock[1].Size,
        FirstCut = FirstCut.Crosscut,
        Cuts =
        [
            new(1, FirstCut.Crosscut, new(In(28, 1, 2), Length.Zero, Kerf, In(4))),
            new(2, FirstCut.Crosscut, new(In(57, 1, 8), Length.Zero, Kerf, In(4))),
            new(3, FirstCut.Rip, new(Length.Zero, In(2, 1, 4), In(28, 1, 2), Kerf)),
            new(4, FirstCut.Rip, new(In(28, 5, 8), In(2, 1, 4), In(28, 1, 2), Kerf)),
        ],
        Pieces =
        [
            new PartPiece(new(Length.Zero, Length.Zero, In(28, 1, 2), In(2, 1, 4)), "Leg", [new(1)], false, new Recipe(1, 1, 2)),
            new PartPiece(new(Length.Zero, In(2, 3, 8), In(28, 1, 2), In(1, 5, 8)), "Brace", 1, false),
            new PartPiece(new(In(28, 5, 8), Length.Zero, In(28, 1, 2), In(2, 1, 4)), "Leg", [new(1, 2)], false, new Recipe(1, 1, 2)),
            new PartPiece(new(In(28, 5, 8), In(2, 3, 8), In(28, 1, 2), In(1, 5, 8)), "Brace", 1, false) { Use = PieceUse.Spare },
            new WastePiece(new(In(57, 1, 4), Length.Zero, In(4, 3, 4), In(4))),
        ],
    };
}
