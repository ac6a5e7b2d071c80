using Xunit;

namespace Offcuts.Domain.Tests;

/// <summary>Hand-made plans, each compared with one that is made from the first by one change.</summary>
public class PlanComparisonTests
{
    private static readonly Board Ash = new() { Id = "A", Species = "white-ash", Size = Inches(1, 3, 60), LoggedAt = default };
    private static readonly Part Rail = new() { Name = "rail", Quantity = 2, Finished = Inches(1, 2, 24), Species = ["white-ash"] };
    private static readonly PlanningProblem Before = new() { Stock = [Ash], Design = new Design { Name = "frame", Parts = [Rail] }, Shop = new Shop() };
    private static readonly BoardCut Whole = Cut(1, "A", new PartPiece(At(0), "rail", 1, false), new PartPiece(At(25), "rail", 2, false));

    [Fact]
    public void The_same_pieces_at_the_same_places_are_kept_whatever_their_numbers()
    {
        var renumbered = Whole with { Number = 2, Pieces = [new PartPiece(At(0), "rail", 2, false), new PartPiece(At(25), "rail", 1, false)] };
        var change = Assert.Single(Compare(Before, Whole, renumbered).Boards);
        Assert.Equal((BoardChangeKind.Kept, 1, 2), (change.Kind, change.EarlierNumber, change.Board.Number));
    }

    [Fact]
    public void Another_place_another_cut_or_another_part_is_another_way_to_cut()
    {
        BoardCut[] others =
        [
            Whole with { Pieces = [new PartPiece(At(0), "rail", 1, false), new PartPiece(At(26), "rail", 2, false)] },
            Whole with { Cuts = [new SawCut(1, FirstCut.Crosscut, At(24))] },
            Whole with { Pieces = [new PartPiece(At(0), "rail", 1, false), new PartPiece(At(25), "leg", 1, false)] },
        ];
        Assert.All(others, other => Assert.Equal(BoardChangeKind.Recut, Assert.Single(Compare(Before, Whole, other).Boards).Kind));
    }

    [Fact]
    public void Of_several_alike_those_that_are_cut_alike_are_the_same()
    {
        var one = Whole with { Pieces = [new PartPiece(At(0), "rail", 1, false)] };
        var changes = PlanComparison.Of(
            new EarlierPlan(Before, Plan(Whole, one with { Number = 2, Copy = 2 })), Before, Plan(one, Whole with { Number = 2, Copy = 2 }));
        Assert.All(changes.Boards, board => Assert.Equal(BoardChangeKind.Kept, board.Kind));
        Assert.Equal([2, 1], changes.Boards.Select(board => board.EarlierNumber));
    }

    [Fact]
    public void Of_several_alike_of_which_some_are_held_fewer_may_be_cut()
    {
        var two = Before with { Stock = [Ash with { Quantity = 2 }] };
        var one = Whole with { Pieces = [new PartPiece(At(0), "rail", 1, false)] };
        var changes = PlanComparison.Of(
            new EarlierPlan(two, Plan(one, one with { Number = 2, Copy = 2, Pieces = [new PartPiece(At(0), "rail", 2, false)] })), Before, Plan(one));
        var dropped = Assert.Single(changes.Boards, board => board.Kind == BoardChangeKind.Dropped);
        Assert.Equal([new ChangeReason(ChangeReasonKind.BoardFewer)], dropped.Reasons);
        Assert.Equal("Board A is not used any more: fewer of it may be cut now.", new ChangeText(two, Before).Of(dropped));
    }

    public static TheoryData<string, ChangeReasonKind, string?> Reasons => new()
    {
        { "board", ChangeReasonKind.BoardGone, null },
        { "knot", ChangeReasonKind.BoardChanged, null },
        { "part", ChangeReasonKind.PartGone, "rail" },
        { "fewer", ChangeReasonKind.PartFewer, "rail" },
        { "longer", ChangeReasonKind.PartChanged, "rail" },
        { "kerf", ChangeReasonKind.ShopChanged, null },
    };

    [Theory]
    [MemberData(nameof(Reasons))]
    public void What_has_changed_about_a_board_is_said(string what, ChangeReasonKind kind, string? part)
    {
        var now = what switch
        {
            "board" => Before with { Stock = [] },
            "knot" => Before with { Stock = [Ash with { Defects = [new Defect("knot", At(2))] }] },
            "part" => Before with { Design = Before.Design with { Parts = [] } },
            "fewer" => Before with { Design = Before.Design with { Parts = [Rail with { Quantity = 1 }] } },
            "longer" => Before with { Design = Before.Design with { Parts = [Rail with { Finished = Inches(1, 2, 26) }] } },
            _ => Before with { Shop = new Shop { Kerf = Length.FromInches(0, 1, 16) } },
        };
        var change = Assert.Single(Compare(now, Whole).Boards);
        Assert.Equal((BoardChangeKind.Dropped, 1), (change.Kind, change.EarlierNumber));
        Assert.Equal([new ChangeReason(kind, part)], change.Reasons);
    }

    /// <summary>Where a board lies, what it is called in the design's text and how sizes are shown has no part in how it is cut.</summary>
    [Fact]
    public void What_does_not_bear_on_the_cutting_is_no_reason()
    {
        var now = Before with
        {
            Stock = [Ash with { Place = "rack B", Note = "seen", LoggedAt = DateTimeOffset.UnixEpoch }],
            Shop = new Shop { Unit = DisplayUnit.Millimetre },
            Design = Before.Design with { Name = "other" },
        };
        Assert.Empty(Assert.Single(Compare(now, Whole).Boards).Reasons);
    }

    private static PlanChanges Compare(PlanningProblem now, BoardCut before, params BoardCut[] boards) =>
        PlanComparison.Of(new EarlierPlan(Before, Plan(before)), now, Plan(boards));

    private static Plan Plan(params BoardCut[] boards) => new()
    {
        Status = PlanStatus.Feasible,
        Boards = boards,
        WoodCost = Money.Zero,
        ItemCost = Money.Zero,
        WoodBound = Money.Zero,
        WorthConsumed = Money.Zero,
        WorthReturned = Money.Zero,
        Run = new PlanRun(1, default, default, default, true, "1"),
    };

    private static BoardCut Cut(int number, string board, params Piece[] pieces) => new()
    {
        Number = number,
        BoardId = board,
        Kind = BoardKind.Solid,
        Species = "white-ash",
        Surface = Surface.Rough,
        Size = Inches(1, 3, 60),
        FirstCut = FirstCut.Crosscut,
        Pieces = pieces,
        Cuts = [],
    };

    private static Rect At(int inches) => new(Length.FromInches(inches), Length.Zero, Length.FromInches(24), Length.FromInches(3));

    private static Dimensions Inches(int thickness, int width, int length) => new(Length.FromInches(thickness), Length.FromInches(width), Length.FromInches(length));
}
