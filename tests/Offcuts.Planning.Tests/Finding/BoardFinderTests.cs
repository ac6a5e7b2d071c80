using Offcuts.Domain;
using Offcuts.Planning.Finding;
using Offcuts.Testing;
using Xunit;
using static Offcuts.Planning.Tests.Condition.Bench;

namespace Offcuts.Planning.Tests.Finding;

/// <summary>What is found on the rack, worked out by hand from the shop's allowances and the cutting rules.</summary>
public class BoardFinderTests
{
    // Rough stock loses 1/2 in of length, 1/4 in of width and 3/16 in of thickness (Shop's defaults).
    [Theory]
    [InlineData(1, 4, 40, 0.8125, 3.75, 39.5, null)]
    [InlineData(1, 4, 40, 0.828125, 3.75, 39.5, MissingReason.WrongThickness)]
    [InlineData(1, 4, 40, 0.8125, 3.765625, 39.5, MissingReason.TooNarrow)]
    [InlineData(1, 4, 40, 0.8125, 3.75, 39.515625, MissingReason.TooShort)]
    // The jointer takes 8 in.
    [InlineData(1, 9, 40, 0.75, 7.75, 20, null)]
    [InlineData(1, 9, 40, 0.75, 7.765625, 20, MissingReason.TooWideForMachines)]
    public void A_board_is_found_to_the_last_64th_and_not_beyond(
        decimal thick, decimal wide, decimal lengthOf, decimal thickness, decimal width, decimal length, MissingReason? whyNot)
    {
        var found = Find(Size(thickness, width, length), 1, Board(Size(thick, wide, lengthOf)));
        Assert.Equal(whyNot is null ? 1 : 0, found.Fits.Count);
        Assert.Equal(whyNot is null ? [] : [whyNot.Value], found.Nearest.SelectMany(near => near.Lacks).Select(lack => lack.Reason));
        Assert.All(found.Nearest, near => Assert.Equal("K7M", near.BoardId));
    }

    [Fact]
    public void It_says_what_is_left_over_and_what_that_costs()
    {
        // 1 x 6 x 60 in: the blank is 5 1/4 x 20 1/2 in, behind it a kerf of 1/8 in and 39 3/8 in.
        var found = Find(Size(0.75m, 5, 20), 1, Board(Size(1, 6, 60)));
        var fit = Assert.Single(found.Fits);
        Assert.Equal((2, 1), (fit.Gives, fit.Cut));
        Assert.Equal([Size(1, 6, 39.375m)], fit.Leftovers);
        // By the formula of Worth at 6.00 a board foot: 2.5 bd ft x (0.3 + 0.7 x 60/96) x (0.5 + 0.5 x 6/8), and 1.640625 bd ft of 39 3/8 in.
        Assert.Equal(new Money(967 - 505), fit.WorthSpent);

        var both = Find(Size(0.75m, 5, 20), 3, Board(Size(1, 6, 60))).Fits[0];
        Assert.Equal((2, 2), (both.Gives, both.Cut));
        // Two blanks and two kerfs take 41 1/4 in.
        Assert.Equal([Size(1, 6, 18.75m)], both.Leftovers);
    }

    [Fact]
    public void The_nearest_fit_comes_first_and_what_is_buried_later()
    {
        Board[] stock = [Board("long", 96), Board("fit", 21), Board("mid", 45), Board("buried", 21) with { Place = "loft" }];
        var found = BoardFinder.Find(Problem(Size(0.75m, 5, 20), 1, stock) with { Reaches = new Dictionary<string, Reach> { ["loft"] = Reach.Buried } }, 10);
        Assert.Equal(["fit", "mid", "long", "buried"], found.Fits.Select(fit => fit.Board.Id));
        Assert.Equal([Reach.Easy, Reach.Easy, Reach.Easy, Reach.Buried], found.Fits.Select(fit => fit.Reach));
        Assert.Equal((4, 1 + 4 + 2 + 1L), (found.Boards, found.Gives));
        var two = BoardFinder.Find(Problem(Size(0.75m, 5, 20), 1, stock[..3]), 2);
        Assert.Equal(["fit", "mid"], two.Fits.Select(fit => fit.Board.Id));
        Assert.Equal(3, two.Boards);
    }

    [Fact]
    public void Boards_that_give_all_come_before_those_that_give_some()
    {
        var found = Find(Size(0.75m, 5, 20), 3, Board("one", 21), Board("three", 66), Board("alike", 21) with { Quantity = 3 });
        Assert.Equal(["alike", "three", "one"], found.Fits.Select(fit => fit.Board.Id));
        Assert.Equal(7, found.Gives);
    }

    [Fact]
    public void A_piece_comes_from_between_defects_and_only_of_what_is_sure()
    {
        var knot = Board(Size(1, 6, 60)) with { Defects = [new Defect("knot", new Rect(In(30), In(2), In(1), In(1)))] };
        Assert.Equal(2, Assert.Single(Find(Size(0.75m, 5, 20), 1, knot).Fits).Gives);
        var wide = Find(Size(0.75m, 5, 40), 1, knot);
        Assert.Equal(MissingReason.TooShort, Assert.Single(Assert.Single(wide.Nearest).Lacks).Reason);
        var guessed = Board(Size(1, 6, 21)) with { Estimates = new Estimates(Length: true) };
        Assert.Equal(new BoardLack(MissingReason.TooShort, In(20.5m), In(20)), Assert.Single(Assert.Single(Find(Size(0.75m, 5, 20), 1, guessed).Nearest).Lacks));
        Assert.Equal(guessed, Assert.Single(Find(Size(0.75m, 5, 19), 1, guessed).Fits).Board);
    }

    [Fact]
    public void A_thick_board_is_resawn_where_the_shop_has_a_saw_for_it()
    {
        // floor((2 + 1/16) / (3/4 + 1/8 + 1/16)) = 2 slices.
        var problem = Problem(Size(0.75m, 5, 20), 1, Board(Size(2, 6, 21)));
        Assert.Equal(1, Assert.Single(BoardFinder.Find(problem, 1).Fits).Gives);
        Assert.Equal(2, Assert.Single(BoardFinder.Find(problem with { Shop = new Shop { ResawHeight = In(8) } }, 1).Fits).Gives);
    }

    [Fact]
    public void A_piece_that_may_be_turned_is_found_across_the_board()
    {
        var sheet = Board(Size(0.5m, 24, 12)) with { Kind = BoardKind.Sheet, Surface = Surface.Surfaced };
        Assert.Empty(Find(Size(0.5m, 10, 20), 1, sheet).Fits);
        var problem = Problem(Size(0.5m, 10, 20), 1, sheet);
        var free = problem with { Design = problem.Design with { Parts = [problem.Design.Parts[0] with { Grain = Grain.Free }] } };
        Assert.Equal(1, Assert.Single(BoardFinder.Find(free, 1).Fits).Gives);
    }

    [Fact]
    public void Those_that_lack_least_are_told_first_with_all_that_they_lack()
    {
        // It takes 15/16 x 5 1/4 x 36 1/2 in: the last lacks 1/16 in of thickness and 18 1/2 in of length.
        var found = Find(
            Size(0.75m, 5, 36), 1, Board("worst", 18) with { Size = Size(0.875m, 6, 18) }, Board("short", 30), Board("thin", 40) with { Size = Size(0.875m, 6, 40) }, Board("just", 36));
        Assert.Equal(["just", "thin", "short", "worst"], found.Nearest.Select(near => near.BoardId));
        Assert.Equal("too short by 1/2\" (takes 36 1/2\", has 36\")", FindText.WhyNot(found.Nearest[0], DisplayUnit.Inch));
        Assert.Equal(
            "too thin by 1/16\" (takes 15/16\", has 7/8\"); too short by 18 1/2\" (takes 36 1/2\", has 18\")", FindText.WhyNot(found.Nearest[3], DisplayUnit.Inch));
        Assert.Empty(Find(Size(0.75m, 5, 36), 1, Board("oak", 40) with { Species = "white-oak" }).Nearest);
    }

    [Fact]
    public void A_warped_board_that_is_large_enough_says_what_flattening_would_take()
    {
        var bowed = Board(Size(1, 6, 40)) with { Warp = new Warp(In(0.5m), default, default, default) };
        var lack = Assert.Single(Assert.Single(Find(Size(0.75m, 5, 36), 1, bowed).Nearest).Lacks);
        Assert.Equal((MissingReason.TooWarped, In(1)), (lack.Reason, lack.Has));
        Assert.True(lack.Needed > In(1.25m));
    }

    [Fact]
    public void Ten_thousand_boards_are_answered_at_once()
    {
        var dice = new Random(1);
        var stock = Enumerable.Range(1, 10_000).Select(number => Board(BoardIds.FromNumber(number), 12) with
        {
            Size = new(In(dice.Next(48, 128) / 64m), In(dice.Next(64, 640) / 64m), In(dice.Next(640, 6400) / 64m)),
            Defects = number % 10 == 0 ? [new Defect("knot", new Rect(In(4), In(0.25m), In(1), In(0.5m)))] : [],
        }).ToArray();
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var found = BoardFinder.Find(Problem(Size(0.75m, 3, 24), 4, stock), 20);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(3), $"It took {watch.Elapsed}.");
        Assert.Equal(20, found.Fits.Count);
        Assert.InRange(found.Boards, 1000, 9000);
    }

    private static BoardSearch Find(Dimensions finished, int quantity, params Board[] stock) => BoardFinder.Find(Problem(finished, quantity, stock), 10);

    private static PlanningProblem Problem(Dimensions finished, int quantity, params Board[] stock) => new()
    {
        Shop = new Shop(),
        Design = new PieceWanted(finished, "white-ash", quantity).AsDesign(),
        Stock = stock,
        Today = RandomShops.Today,
    };

    private static Board Board(string id, decimal length) => new()
    {
        Id = id,
        Species = "white-ash",
        Size = Size(1, 6, length),
        LoggedAt = new DateTimeOffset(RandomShops.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
    };

    private static Board Board(Dimensions size) => Condition.Bench.Board(size) with
    {
        LoggedAt = new DateTimeOffset(RandomShops.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
    };
}
