using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>More pieces and spares, on boards of which the results can be reckoned by hand: kerf 3, no allowances, leftovers from 100 x 300.</summary>
public class ExtraPieceTests
{
    private static readonly Part Slat = new() { Name = "slat", Quantity = 2, Finished = new(Mm(20), Mm(50), Mm(290)), Species = ["white-ash"] };

    /// <summary>The board is 4 x 50 and 3 kerfs wide: two slats must be, two more come out of the 103 wide waste beside them.</summary>
    [Fact]
    public void More_are_made_from_waste_until_there_are_enough()
    {
        Assert.Equal(3, Made(Slat with { MostQuantity = 3 }, Board(209, 290)).Count);
        Assert.Equal(4, Made(Slat with { MostQuantity = 9 }, Board(209, 290)).Count);
    }

    [Fact]
    public void No_board_is_opened_and_nothing_bought_for_more()
    {
        var plan = Solve(Slat with { MostQuantity = 9, Spares = 1 }, [Board(103, 290, quantity: 5)]);
        Assert.Equal((2, 0), (Count(plan).Count, Count(plan).Spares));
        Assert.Single(plan.Boards);
    }

    /// <summary>From 1200 x 50 two slats leave 614, a leftover by its size of at least 300 x 40.</summary>
    [Theory]
    [InlineData(null, 2, 1)]
    [InlineData(ExtraSource.Waste, 2, 0)]
    [InlineData(ExtraSource.Leftovers, 4, 0)]
    public void Leftovers_are_only_cut_where_the_design_lets_them(ExtraSource? extras, int pieces, int spares)
    {
        var part = Slat with { MostQuantity = 4, Spares = 1, Extras = extras };
        var plan = Solve(part, [Board(50, 1200)], keepWidth: 40);
        Assert.Equal((pieces, spares), (Count(plan).Count, Count(plan).Spares));
        Assert.Equal(spares, plan.Boards[0].Pieces.OfType<PartPiece>().Count(piece => piece.Use == PieceUse.Spare));
    }

    /// <summary>Four slats of 50 in a span of 1000 leave 800: three gaps between them, or five with those at the ends.</summary>
    [Theory]
    [InlineData(false, 3, 800, 266.7)]
    [InlineData(true, 5, 800, 160)]
    public void The_gaps_follow_from_the_count(bool ends, int number, int total, double nearest)
    {
        var gaps = Made(Slat with { MostQuantity = 4, Spacing = new Spacing(Mm(1000), ends) }, Board(209, 290)).Gaps!;
        Assert.Equal((number, Mm(total)), (gaps.Number, gaps.Total));
        Assert.Equal((decimal)nearest, gaps.Nearest(DisplayUnit.Millimetre).Millimetres);
        Assert.Equal(ends, gaps.IsExact(DisplayUnit.Millimetre));
    }

    [Fact]
    public void Pieces_grow_no_wider_than_their_span()
    {
        var part = Slat with { Most = Slat.Finished with { Width = Mm(90) }, Spacing = new Spacing(Mm(150), Ends: false) };
        var gaps = Made(part, Board(205, 290)).Gaps!;
        Assert.Equal(Mm(10), gaps.Total);
    }

    [Fact]
    public void A_part_of_which_some_are_missing_gets_no_extras()
    {
        var plan = Solve(Slat with { Quantity = 3, MostQuantity = 9, Spares = 1 }, [Board(103, 290)]);
        Assert.Equal(PlanStatus.Incomplete, plan.Status);
        Assert.Equal(new PartCount("slat", 2, 0, null), Count(plan));
    }

    /// <summary>A blank 45 thick holds two slices of 20, each with 1 to clean up, and a cut of 3: one blank must be, the waste beside it holds another.</summary>
    [Fact]
    public void Spares_are_resawn_too()
    {
        var shop = Shop with { ResawHeight = Mm(100), ResawKerf = Mm(3), ResawCleanup = Mm(1) };
        var board = Board(103, 290) with { Size = new(Mm(45), Mm(103), Mm(290)) };
        Assert.Equal(2, Count(Solve(Slat with { Spares = 5 }, [board], shop)).Spares);

        // One spare needs no resaw.
        var spare = Assert.Single(Solve(Slat with { Spares = 1 }, [board], shop).Boards[0].Pieces.OfType<PartPiece>(), piece => piece.Use == PieceUse.Spare);
        Assert.Equal(Recipe.Plain, spare.Recipe);
    }

    /// <summary>
    /// Blocks 100 long are milled on blanks of at least 305: two fit on that, three in a row with two kerfs take 306. Behind the blank that must be
    /// there is so much waste.
    /// </summary>
    [Theory]
    [InlineData(305, 5, 2, true)]
    [InlineData(306, 5, 3, false)]
    [InlineData(306, 2, 2, true)]
    [InlineData(304, 5, 0, true)]
    public void Spares_that_are_short_are_milled_several_in_a_row(int room, int wanted, int spares, bool carried)
    {
        var shop = Shop with { ShortBlanks = ShortBlanks.Refuse, ShortestAtPlaner = Mm(305), ShortestAtJointer = Mm(305) };
        var block = Slat with { Finished = new(Mm(20), Mm(50), Mm(100)), Spares = wanted };
        var plan = Solve(block, [Board(50, 0) with { Size = new(Mm(25), Mm(50), Mm(305 + 3 + room)) }], shop);
        Assert.Equal(spares, Count(plan).Spares);
        var blanks = plan.Boards[0].Pieces.OfType<PartPiece>().Where(piece => piece.Use == PieceUse.Spare).ToList();
        Assert.Equal(Math.Min(spares, 1), blanks.Count);
        Assert.Equal(Enumerable.Range(1, spares), blanks.SelectMany(spare => spare.Copies).Select(copy => copy.Copy));
        Assert.All(blanks, spare => Assert.Equal(carried, spare.Recipe.Carried));
    }

    private static PartCount Made(Part part, Board board) => Count(Solve(part, [board]));

    private static PartCount Count(Plan plan) => Assert.Single(plan.Counts);

    private static Shop Shop => new()
    {
        Kerf = Mm(3),
        Surfaced = new Allowances(Length.Zero, Length.Zero, Mm(2)),
        Keep = new Dimensions(Mm(5), Mm(110), Mm(300)),
    };

    private static Plan Solve(Part part, IReadOnlyList<Board> stock, int keepWidth) =>
        Solve(part, stock, Shop with { Keep = new Dimensions(Mm(5), Mm(keepWidth), Mm(300)) });

    private static Plan Solve(Part part, IReadOnlyList<Board> stock, Shop? shop = null)
    {
        var problem = new PlanningProblem
        {
            Shop = shop ?? Shop,
            Design = new Design { Name = "slats", Parts = [part] },
            Stock = stock,
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Board Board(int width, int length, int quantity = 1) => new()
    {
        Id = "A1",
        Species = "white-ash",
        Size = new(Mm(20), Mm(width), Mm(length)),
        Quantity = quantity,
        Surface = Surface.Surfaced,
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
