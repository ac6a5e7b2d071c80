using Xunit;

namespace Offcuts.Domain.Tests;

public class SeenStockTests
{
    private static readonly SeenStock Then = Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "c", 1));
    private static readonly FitOutcome Free = new()
    {
        Effort = PlanEffort.Quick,
        WoodCost = Money.Zero,
        WoodBound = Money.Zero,
        ItemCost = new Money(500),
        BoardFeet = 4,
        BoardFeetFromStock = 4,
        Uses = [new StockUse("AAA", 1, 1), new StockUse("BBB", 2, 3)],
    };

    private static readonly FitOutcome Bought = Free with { WoodCost = new Money(900), WoodBound = new Money(900) };

    [Fact]
    public void A_plan_that_buys_nothing_costs_the_least_as_long_as_its_boards_are_there()
    {
        Assert.True(Serves(Free, Then));
        Assert.True(Serves(Free, Stock(("AAA", "a", 1), ("BBB", "b", 2))));
        Assert.True(Serves(Free, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "other", 1), ("DDD", "d", 1))));
        Assert.False(Serves(Free, Stock(("AAA", "a", 1), ("BBB", "b", 1), ("CCC", "c", 1))));
        Assert.False(Serves(Free, Stock(("AAA", "other", 1), ("BBB", "b", 3), ("CCC", "c", 1))));
        Assert.False(Serves(Free, Stock(("BBB", "b", 3), ("CCC", "c", 1))));
        // That nothing is cheaper does not say that the same boards would be cut.
        Assert.False(Serves(Free, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "c", 1), ("DDD", "d", 1)), onlyByCost: false));
    }

    [Fact]
    public void Any_plan_serves_while_boards_only_leave_that_it_does_not_cut()
    {
        foreach (var plan in new[] { Free, Bought, Bought with { WoodBound = new Money(899) }, Bought with { Missing = [new MissingPart("Leg", 1, MissingReason.TooFew)] } })
        {
            foreach (var onlyByCost in new[] { true, false })
            {
                Assert.True(Serves(plan, Then, onlyByCost));
                Assert.True(Serves(plan, Stock(("AAA", "a", 1), ("BBB", "b", 2)), onlyByCost));
                Assert.False(Serves(plan, Stock(("AAA", "a", 1), ("BBB", "b", 1), ("CCC", "c", 1)), onlyByCost));
                Assert.False(Serves(plan, Stock(("BBB", "b", 3), ("CCC", "c", 1)), onlyByCost));
            }
        }
    }

    [Fact]
    public void A_plan_that_buys_serves_only_while_nothing_comes()
    {
        Assert.False(Serves(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 4))));
        Assert.False(Serves(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "other", 1))));
        Assert.False(Serves(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("DDD", "d", 1))));
        Assert.False(Serves(Free with { Missing = [new MissingPart("Leg", 1, MissingReason.TooFew)] }, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("DDD", "d", 1))));
    }

    /// <summary>One board of three is a third.</summary>
    [Theory]
    [InlineData(0.32, false)]
    [InlineData(0.34, true)]
    public void Where_boards_count_a_part_of_them_may_be_new_to_a_plan_that_buys_nothing(double mayBeNew, bool expected)
    {
        foreach (var now in new[]
        {
            Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "other", 1)),
            Stock(("AAA", "a", 1), ("BBB", "b", 3), ("DDD", "d", 1)),
            Stock(("AAA", "a", 1), ("BBB", "b", 4)),
        })
        {
            Assert.Equal(expected, Then.StillServes(Free, now, mayBeNew));
            Assert.False(Then.StillServes(Bought, now, mayBeNew));
        }

        Assert.False(Then.StillServes(Free, Stock(("AAA", "other", 1), ("BBB", "b", 3)), mayBeNew));
        Assert.False(Then.StillServes(Free, Stock(("AAA", "a", 1), ("BBB", "b", 4), ("CCC", "c", 2)), mayBeNew));
    }

    private static bool Serves(FitOutcome outcome, SeenStock now, bool onlyByCost = true) =>
        Then.StillServes(outcome, now, onlyByCost ? double.PositiveInfinity : 0);

    private static SeenStock Stock(params (string Id, string Wood, int Quantity)[] boards) => new([.. boards.Select(board => new TouchableBoard(board.Id, board.Wood, board.Quantity))]);
}
