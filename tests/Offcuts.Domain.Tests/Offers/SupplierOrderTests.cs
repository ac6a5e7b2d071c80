using Xunit;

namespace Offcuts.Domain.Tests;

public class SupplierOrderTests
{
    private static readonly Offer Ash = new()
    {
        Id = "hill-yard/ash",
        Supplier = "hill-yard",
        SupplierName = "Hill Yard",
        Name = "Ash 4/4",
        Species = "white-ash",
        Thickness = Length.FromInches(1),
        Form = new ByVolume([Length.FromInches(5), Length.FromInches(6)], [Length.FromInches(72), Length.FromInches(96)], new Money(575), VolumeUnit.BoardFoot),
    };

    private static readonly PlanningProblem Problem = new()
    {
        Shop = new Shop { SecondStop = new Money(1000) },
        Stock = [],
        Offers = [Ash],
        Terms = [new SupplierTerms("hill-yard") { Delivery = new Money(2500), MinimumOrder = new Money(10000) }],
        Design = new Design
        {
            Name = "bench",
            Items = [new BoughtItem("bolts", 4, new Money(150), "Hill Yard"), new BoughtItem("oil", 1, new Money(900), "Paint Shop"), new BoughtItem("rags", 1, new Money(100))],
        },
    };

    [Fact]
    public void Orders_are_charged_by_the_terms_of_their_supplier()
    {
        // 2 of 3 board feet and 1 of 4: 10 at 5.75, in whole cents.
        var sizes = OfferSize.Of(Ash);
        var orders = SupplierOrders.Of(Problem, [new Purchase(sizes[2], 2), new Purchase(sizes[3], 1)]);

        Assert.Equal(["hill-yard", "paint-shop", ""], orders.Select(order => order.Supplier));
        Assert.Equal((6350, 2500, 3650, 12500), (orders[0].Goods.MinorUnits, orders[0].Charge.Delivery.MinorUnits, orders[0].Charge.TopUp.MinorUnits, orders[0].Total.MinorUnits));
        Assert.Equal(900, orders[1].Total.MinorUnits);
        Assert.True(orders[2].IsAnywhere);
        // What may be bought anywhere is no stop.
        Assert.Equal(new Money(1000), SupplierOrders.StopCost(Problem, orders));
        Assert.Equal("Hill Yard", SupplierOrders.NameOf(Problem, "hill-yard"));
    }

    [Fact]
    public void An_order_is_told_in_the_words_of_the_counter()
    {
        var sizes = OfferSize.Of(Ash);
        Purchase[] wood = [new Purchase(sizes[2], 2), new Purchase(sizes[3], 1)];
        Assert.Equal("4/4 rough white ash", ShoppingText.Wood(Ash, "white ash", DisplayUnit.Inch));
        Assert.Equal("10.0 board feet", ShoppingText.Quantity(wood));
        Assert.Equal("5.75 USD a board foot", ShoppingText.Rate(wood, "USD"));
        Assert.Equal("2 pieces, each at least 6\" wide and 6 ft long", ShoppingText.Size(wood[0], DisplayUnit.Inch));
        Assert.Equal("1 piece, at least 6\" wide and 8 ft long", ShoppingText.Size(wood[1], DisplayUnit.Inch));
        Assert.Contains("random widths", ShoppingText.Advice(Ash), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 96, "72")]
    [InlineData("hill-yard/ash", 96, "72")]
    [InlineData("ash 4/4", 72, "96")]
    [InlineData("Hill Yard", 72, "96")]
    [InlineData("Hill Yard", null, "")]
    [InlineData("another yard", null, "72 96")]
    [InlineData(null, 84, "72 96")]
    public void What_a_yard_does_not_have_is_left_out(string? what, int? inches, string lengths)
    {
        var gone = new Unavailable(what, inches is { } given ? Length.FromInches(given) : null);
        var left = gone.From([Ash]).SelectMany(OfferSize.Of).Select(size => size.Size.Length).Distinct();
        Assert.Equal(lengths, string.Join(' ', left.Select(length => (length.Ticks / Length.FromInches(1).Ticks).ToString(System.Globalization.CultureInfo.InvariantCulture))));
        Assert.Equal(lengths != "72 96", gone.Concerns([Ash]));
    }
}
