using Xunit;

namespace Offcuts.Domain.Tests;

public class ChangeTextTests
{
    private static readonly Offer Ash = new()
    {
        Id = "hill-yard/ash",
        Supplier = "hill-yard",
        SupplierName = "Hill Yard",
        Name = "ash shorts",
        Species = "white-ash",
        Thickness = Length.FromInches(1),
        Form = new ByThePiece(Length.FromInches(3), Length.FromInches(25), new Money(500)),
    };

    private static readonly ChangeText Text = new(Problem([Ash]), Problem([]));

    [Theory]
    [InlineData(BoardChangeKind.Kept, "Board K7M is cut as before.")]
    [InlineData(BoardChangeKind.Recut, "Board K7M is cut otherwise.")]
    [InlineData(BoardChangeKind.New, "Board K7M is used now.")]
    [InlineData(BoardChangeKind.Dropped, "Board K7M is not used any more.")]
    public void Says_what_becomes_of_a_board(BoardChangeKind kind, string expected) =>
        Assert.Equal(expected, Text.Of(new BoardChange(kind, Cut("K7M", null), 1, [])));

    [Fact]
    public void Says_why() => Assert.Equal(
        "Board K7M is cut otherwise: it is recorded otherwise now; fewer of leg are wanted; rail is not wanted any more; the shop's settings have changed.",
        Text.Of(new BoardChange(BoardChangeKind.Recut, Cut("K7M", null), 1,
        [
            new(ChangeReasonKind.BoardChanged), new(ChangeReasonKind.PartFewer, "leg"), new(ChangeReasonKind.PartGone, "rail"), new(ChangeReasonKind.ShopChanged),
        ])));

    [Fact]
    public void A_bought_board_has_the_name_that_people_know_even_if_it_is_not_on_offer_any_more() => Assert.Equal(
        "A bought board, ash shorts from Hill Yard, is not used any more: it is not on offer any more.",
        Text.Of(new BoardChange(BoardChangeKind.Dropped, Cut(null, Ash.Id), 1, [new(ChangeReasonKind.OfferGone)])));

    [Fact]
    public void Says_where_pieces_come_from_and_came_from()
    {
        PieceSource stock = new("K7M", null, 2), bought = new(null, Ash.Id, 1);
        Assert.Equal("rail: 2 from K7M; before 2 from K7M, 1 from what is bought as ash shorts from Hill Yard.", Text.Of(new PartChange("rail", [stock, bought], [stock])));
        Assert.Equal("rail is new: 2 from K7M.", Text.Of(new PartChange("rail", [], [stock])));
        Assert.Equal("rail is not cut any more; before 2 from K7M.", Text.Of(new PartChange("rail", [stock], [])));
    }

    [Fact]
    public void Says_what_it_costs_which_boards_stay_and_what_is_bought()
    {
        Assert.Equal("Changed since plan 3k7m9dxt", ChangeText.Heading("3k7m9dxt"));
        Assert.Equal("It costs as much as before.", ChangeText.Cost("12.00 USD", "12.00 USD"));
        Assert.Equal("It costs 12.00 EUR instead of 12.00 USD.", ChangeText.Cost("12.00 USD", "12.00 EUR"));
        Assert.Equal("No board is cut as before.", ChangeText.Kept([], 2));
        Assert.Equal("Cut as before: 1, 3.", ChangeText.Kept([1, 3], 3));
        Assert.Equal("All its boards are cut as before.", ChangeText.Kept([1, 2], 2));
        Assert.Equal("2. Board K7M is used now.", ChangeText.Numbered(2, "Board K7M is used now."));
        Assert.Equal("Board K7M is not used any more.", ChangeText.Numbered(null, "Board K7M is not used any more."));
        Assert.Equal("Buy 0 instead of 2 of ash shorts, 1 x 3 x 25 in.", ChangeText.Bought(0, 2, "ash shorts", "1 x 3 x 25 in"));
    }

    private static BoardCut Cut(string? board, string? offer) => new()
    {
        Number = 1,
        BoardId = board,
        OfferId = offer,
        Kind = BoardKind.Solid,
        Species = "white-ash",
        Surface = Surface.Rough,
        Size = new Dimensions(Length.FromInches(1), Length.FromInches(3), Length.FromInches(25)),
        FirstCut = FirstCut.Crosscut,
        Pieces = [],
        Cuts = [],
    };

    private static PlanningProblem Problem(IReadOnlyList<Offer> offers) => new() { Stock = [], Offers = offers, Design = new Design { Name = "frame" }, Shop = new Shop() };
}
