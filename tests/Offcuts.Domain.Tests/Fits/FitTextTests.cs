using Xunit;

namespace Offcuts.Domain.Tests;

public class FitTextTests
{
    private static readonly Dimensions Board = SizeText.Parse("1 x 6 x 96", DisplayUnit.Inch);
    private static readonly FitText Text = new(
        new Shop(),
        [
            new Offer { Id = "mill/ash", Supplier = "mill", Species = "white-ash", Thickness = Board.Thickness, Form = new ByThePiece(Board.Width, Board.Length, new Money(900)) },
            new Offer
            {
                Id = "store/ply",
                Supplier = "store",
                Kind = BoardKind.Sheet,
                Species = "birch-plywood",
                Surface = Surface.Surfaced,
                Thickness = Length.FromInches(0, 1, 2),
                Form = new ByThePiece(Length.FromInches(48), Length.FromInches(96), new Money(6000)),
            },
        ],
        SpeciesCatalogue.Default.NameOf);

    private static readonly FitOutcome Nothing = new()
    {
        Effort = PlanEffort.Thorough,
        WoodCost = Money.Zero,
        WoodBound = Money.Zero,
        ItemCost = Money.Zero,
        BoardFeet = 1,
        BoardFeetFromStock = 1,
    };

    [Fact]
    public void One_line_says_what_to_buy_and_what_cannot_be_had()
    {
        var bare = new Design { Name = "Box" };
        var hinged = bare with { Items = [new BoughtItem("Butt hinge", 2, new Money(740))] };
        var shorter = Board with { Length = Length.FromInches(72) };
        var bought = Nothing with
        {
            Purchases =
            [
                new FitPurchase("mill/ash", Board, 2), new FitPurchase("store/ply", Board with { Thickness = Length.FromInches(0, 1, 2) }, 1),
                new FitPurchase("mill/ash", shorter, 1),
            ],
        };
        Assert.Equal("nothing", Text.Lacks(Nothing, bare));
        Assert.Equal("buy 2 Butt hinge", Text.Lacks(Nothing, hinged));
        Assert.Equal("buy 3 boards of 4/4 white ash, 1 sheet of 1/2\" birch plywood and 2 Butt hinge", Text.Lacks(bought, hinged));
        Assert.Equal(
            "buy 2 Butt hinge; no wood for 1 Base and 4 Leg",
            Text.Lacks(Nothing with { Missing = [new MissingPart("Base", 1, MissingReason.TooShort), new MissingPart("Leg", 4, MissingReason.TooFew)] }, hinged));
    }
}
