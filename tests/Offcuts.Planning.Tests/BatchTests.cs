using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Finish groups that ask for one batch, on boards of which each gives exactly one of two legs.</summary>
public class BatchTests
{
    [Fact]
    public void One_batch_is_kept_even_where_other_boards_would_do()
    {
        var plan = Solve(BatchChoice.One, Board("A", "left"), Board("B", null), Board("C", "right"), Board("D", "right"));
        Assert.Equal(["C", "D"], plan.Boards.Select(board => board.BoardId).Order());
    }

    [Fact]
    public void Boards_of_no_batch_will_not_do()
    {
        var plan = Solve(BatchChoice.One, Board("A", null), Board("B", null));
        Assert.Equal((2, MissingReason.NotOfOneBatch), (Assert.Single(plan.Missing).Quantity, plan.Missing[0].Reason));
        Assert.Empty(plan.Boards);
    }

    [Fact]
    public void What_a_batch_is_too_small_for_is_missing()
    {
        var plan = Solve(BatchChoice.One, Board("A", "left"), Board("B", "right"));
        Assert.Equal((1, MissingReason.TooFew), (Assert.Single(plan.Missing).Quantity, plan.Missing[0].Reason));
        Assert.Single(plan.Boards);
    }

    [Fact]
    public void An_offer_is_a_batch_of_its_own()
    {
        var plan = Solve(BatchChoice.One, [Board("A", "left")], [Offer("yard/ash", 500)]);
        Assert.Equal(new Money(1000), plan.WoodCost);
        Assert.All(plan.Boards, board => Assert.Equal("yard/ash", board.OfferId));
    }

    [Theory]
    [InlineData(BatchChoice.Any, 500)]
    [InlineData(BatchChoice.Fewest, 500)]
    [InlineData(BatchChoice.One, 1000)]
    public void The_fewest_batches_cost_no_more_money_and_one_may(BatchChoice choice, int cost) =>
        Assert.Equal(new Money(cost), Solve(choice, [Board("A", "left")], [Offer("yard/ash", 500)]).WoodCost);

    /// <summary>The boards of one batch are longer, so that cutting them up wastes more; yet they are taken.</summary>
    [Fact]
    public void The_fewest_batches_go_before_the_worth_of_the_wood()
    {
        var stock = new[] { Board("A", "left"), Board("B", "right"), Board("C", "both", 500), Board("D", "both", 500) };
        Assert.Equal(["A", "B"], Solve(BatchChoice.Any, stock).Boards.Select(board => board.BoardId).Order());
        Assert.Equal(["C", "D"], Solve(BatchChoice.Fewest, stock).Boards.Select(board => board.BoardId).Order());
    }

    /// <summary>
    /// No batch gives all six legs. All boards of one leg would waste nothing, but are of six batches; of the longer ones, two batches give three legs each.
    /// </summary>
    [Fact]
    public void Where_no_batch_is_enough_two_go_before_many()
    {
        Board[] stock =
        [
            .. "abcdef".Select(name => Board($"S{name}", $"short {name}")),
            .. "123".Select(name => Board($"L{name}", "left", 320)), .. "123".Select(name => Board($"R{name}", "right", 330)),
        ];
        Assert.All(Solve(6, BatchChoice.Any, stock).Boards, board => Assert.StartsWith("S", board.BoardId!, StringComparison.Ordinal));
        var few = Solve(6, BatchChoice.Fewest, stock);
        Assert.Empty(few.Missing);
        Assert.Equal(2, few.Boards.Select(board => stock.Single(each => each.Id == board.BoardId).Batch).Distinct().Count());
    }

    private static Plan Solve(BatchChoice choice, params Board[] stock) => Solve(choice, stock, []);

    private static Plan Solve(int legs, BatchChoice choice, Board[] stock) => Solve(choice, stock, [], legs);

    private static Plan Solve(BatchChoice choice, Board[] stock, Offer[] offers, int legs = 2)
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop
            {
                Kerf = Mm(3),
                Surfaced = new Allowances(Length.Zero, Length.Zero, Mm(2)),
                Keep = new Dimensions(Mm(5), Mm(40), Mm(100)),
            },
            Design = new Design
            {
                Name = "legs",
                Parts = [new Part { Name = "leg", Quantity = legs, Finished = new(Mm(20), Mm(50), Mm(290)), Species = ["white-ash"], Group = "legs" }],
                Groups = [new FinishGroup("legs", false, []) { Batch = choice }],
            },
            Stock = stock,
            Offers = offers,
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Board Board(string id, string? batch, int length = 290) => new()
    {
        Id = id,
        Batch = batch,
        Species = "white-ash",
        Size = new(Mm(20), Mm(50), Mm(length)),
        Surface = Surface.Surfaced,
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    private static Offer Offer(string id, int price) => new()
    {
        Id = id,
        Supplier = "yard",
        Species = "white-ash",
        Thickness = Mm(20),
        Surface = Surface.Surfaced,
        Form = new ByThePiece(Mm(50), Mm(290), new Money(price)),
    };

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
