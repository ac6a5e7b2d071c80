using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Restart;

/// <summary>Plans that start from an earlier one, on boards of which each gives exactly one or two rails.</summary>
public sealed class RestartTests
{
    private static readonly Part Rail = new() { Name = "rail", Finished = Size("3/4 x 2 x 24"), Species = ["white-ash"] };

    /// <summary>Both boards are alike and would do as well; from nothing the one logged first is taken.</summary>
    [Fact]
    public void Of_boards_that_are_alike_the_one_stays_that_the_earlier_plan_cuts()
    {
        var earlier = Replanned.Before(Problem([Rail], Board("B", 2)));
        var both = Problem([Rail], Board("A", 1), Board("B", 2));
        Assert.Equal("A", Assert.Single(Planner.Solve(both, Replanned.Limits).Boards).BoardId);
        var again = Replanned.From(earlier, both);
        Assert.Equal("B", Assert.Single(again.Plan.Boards).BoardId);
        Assert.Equal(BoardChangeKind.Kept, Assert.Single(again.Changes.Boards).Kind);
    }

    [Fact]
    public void Money_goes_before_what_is_kept()
    {
        var dear = Offer("yard/ash", 2000);
        var earlier = Replanned.Before(Problem([Rail]) with { Offers = [dear] });
        Assert.Equal(new Money(2000), earlier.Plan.WoodCost);
        var again = Replanned.From(earlier, Problem([Rail]) with { Offers = [dear, Offer("store/ash", 1999)] });
        Assert.Equal(new Money(1999), again.Plan.WoodCost);
        Assert.Equal(new Money(2000), again.Changes.EarlierWoodCost);
        Assert.Equal([("store/ash", 0, 1), ("yard/ash", 1, 0)], again.Changes.Purchases.Select(change => (change.Offer.Offer.Id, change.Earlier, change.Now)).Order());
        Assert.Equal([BoardChangeKind.New, BoardChangeKind.Dropped], again.Changes.Boards.Select(board => board.Kind));
    }

    /// <summary>A quarter of what a board foot is worth (1.50 here) is what a board cut as before may waste more; beyond that the better plan wins.</summary>
    [Theory]
    [InlineData(27, "A")]
    [InlineData(96, "B")]
    public void A_board_is_kept_for_a_little_more_waste_but_not_for_much(int length, string kept)
    {
        var earlier = Replanned.Before(Problem([Rail], Board("A", 1, length)));
        var again = Replanned.From(earlier, Problem([Rail], Board("A", 1, length), Board("B", 1)));
        Assert.Equal("B", Assert.Single(Planner.Solve(again.Problem, Replanned.Limits).Boards).BoardId);
        Assert.Equal(kept, Assert.Single(again.Plan.Boards).BoardId);
    }

    [Fact]
    public void What_is_not_wanted_any_more_is_left_out_and_said()
    {
        var leg = Rail with { Name = "leg", Finished = Size("3/4 x 2 x 18") };
        var earlier = Replanned.Before(Problem([Rail, leg], Board("A", 1, 45)));
        var again = Replanned.From(earlier, Problem([Rail], Board("A", 1, 45)));
        var board = Assert.Single(again.Changes.Boards);
        Assert.Equal((BoardChangeKind.Recut, "A"), (board.Kind, board.Board.BoardId));
        Assert.Equal([new ChangeReason(ChangeReasonKind.PartGone, "leg")], board.Reasons);
        Assert.Equal(("leg", 1, 0), Assert.Single(again.Changes.Parts.Select(part => (part.Name, part.Earlier.Count, part.Now.Count))));
    }

    [Fact]
    public void A_rule_that_has_changed_is_kept_and_said()
    {
        var earlier = Replanned.Before(Problem([Rail with { Quantity = 2 }], Board("A", 1, 50), Board("B", 1)));
        Assert.Equal("A", Assert.Single(earlier.Plan.Boards).BoardId);

        // Two blanks of 24 1/2 and a kerf of 1 1/4 in do not fit on 50 in.
        var again = Replanned.From(earlier, earlier.Problem with { Shop = new Shop { Kerf = Length.FromInches(1, 1, 4) } });
        Assert.Empty(again.Plan.Missing);
        Assert.Equal(2, again.Plan.Boards.Count);
        Assert.Equal([new ChangeReason(ChangeReasonKind.ShopChanged)], again.Changes.Boards.Single(board => board.Board.BoardId == "A").Reasons);
    }

    [Fact]
    public void The_same_seed_gives_the_same_plan()
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(1, 8))
        {
            var earlier = Replanned.Before(Replanned.Shop("plain", ShopScale.Tiny, seed));
            var changed = SmallChanges.OnePieceMore(earlier.Problem, seed);
            var (one, other) = (Replanned.From(earlier, changed), Replanned.From(earlier, changed));
            if (one.Plan.Run.Finished && other.Plan.Run.Finished)
            {
                compared++;
                Assert.Equal(one.Plan.Boards.SelectMany(board => board.Pieces), other.Plan.Boards.SelectMany(board => board.Pieces));
                Assert.Equal(one.Plan.Boards.Select(board => (board.BoardId, board.OfferId, board.Copy)), other.Plan.Boards.Select(board => (board.BoardId, board.OfferId, board.Copy)));
            }
        }

        Assert.True(compared > 2, FormattableString.Invariant($"Only {compared} searches ended before their time."));
    }

    private static PlanningProblem Problem(IReadOnlyList<Part> parts, params IReadOnlyList<Board> stock) => new()
    {
        Stock = stock,
        Design = new Design { Name = "frame", Parts = parts },
        Shop = new Shop(),
        Today = RandomShops.Today,
    };

    // 1 x 3 in; a rail's blank is 24 1/2 in long, so that 25 in give one.
    private static Board Board(string id, int day, int length = 25) => new()
    {
        Id = id,
        Species = "white-ash",
        Size = new Dimensions(Length.FromInches(1), Length.FromInches(3), Length.FromInches(length)),
        LoggedAt = new DateTimeOffset(2026, 5, day, 0, 0, 0, TimeSpan.Zero),
    };

    private static Offer Offer(string id, int price) => new()
    {
        Id = id,
        Supplier = id.Split('/')[0],
        Species = "white-ash",
        Thickness = Length.FromInches(1),
        Form = new ByThePiece(Length.FromInches(3), Length.FromInches(25), new Money(price)),
    };

    private static Dimensions Size(string text) => SizeText.Parse(text, DisplayUnit.Inch);
}
