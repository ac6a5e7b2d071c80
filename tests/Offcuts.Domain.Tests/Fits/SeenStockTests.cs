using Xunit;

namespace Offcuts.Domain.Tests;

public class SeenStockTests
{
    private static readonly SeenStock Then = Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "c", 1));
    private static readonly FitOutcome Free = new()
    {
        IsThorough = false,
        WoodCost = Money.Zero,
        WoodBound = Money.Zero,
        ItemCost = new Money(500),
        BoardFeet = 4,
        BoardFeetFromStock = 4,
        Uses = [new StockUse("AAA", 1, 1), new StockUse("BBB", 2, 3)],
    };

    private static readonly FitOutcome Bought = Free with { WoodCost = new Money(900), WoodBound = new Money(900) };

    [Fact]
    public void A_plan_that_buys_nothing_serves_as_long_as_its_boards_are_there()
    {
        Assert.True(Then.StillServes(Free, Then));
        Assert.True(Then.StillServes(Free, Stock(("AAA", "a", 1), ("BBB", "b", 2))));
        Assert.True(Then.StillServes(Free, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "other", 1), ("DDD", "d", 1))));
        Assert.False(Then.StillServes(Free, Stock(("AAA", "a", 1), ("BBB", "b", 1), ("CCC", "c", 1))));
        Assert.False(Then.StillServes(Free, Stock(("AAA", "other", 1), ("BBB", "b", 3), ("CCC", "c", 1))));
        Assert.False(Then.StillServes(Free, Stock(("BBB", "b", 3), ("CCC", "c", 1))));
    }

    [Fact]
    public void A_plan_that_buys_serves_only_while_nothing_comes_and_if_it_is_proved()
    {
        Assert.True(Then.StillServes(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 3))));
        Assert.False(Then.StillServes(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 4))));
        Assert.False(Then.StillServes(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "other", 1))));
        Assert.False(Then.StillServes(Bought, Stock(("AAA", "a", 1), ("BBB", "b", 3), ("DDD", "d", 1))));
        Assert.False(Then.StillServes(Bought with { WoodBound = new Money(899) }, Then));
        Assert.False(Then.StillServes(Bought with { Missing = [new MissingPart("Leg", 1, MissingReason.TooFew)] }, Then));
    }

    [Fact]
    public void The_same_stock_is_the_same_board_by_board()
    {
        Assert.True(Then.IsSameAs(Stock(("AAA", "a", 1), ("BBB", "b", 3), ("CCC", "c", 1))));
        Assert.False(Then.IsSameAs(Stock(("AAA", "a", 1), ("BBB", "b", 2), ("CCC", "c", 1))));
        Assert.False(Then.IsSameAs(Stock(("AAA", "a", 1), ("BBB", "b", 3))));
    }

    private static SeenStock Stock(params (string Id, string Wood, int Quantity)[] boards) => new([.. boards.Select(board => new TouchableBoard(board.Id, board.Wood, board.Quantity))]);
}
