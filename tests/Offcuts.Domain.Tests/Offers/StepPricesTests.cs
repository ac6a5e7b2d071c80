using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class StepPricesTests
{
    [Fact]
    public void A_step_counts_from_just_its_quantity_on_for_all_sizes_together()
    {
        // 4/4 x 6 in x 8 ft is 4 board feet, x 6 ft is 3.
        var offer = Ash(new ByVolume([Length.FromInches(6)], [Length.FromInches(72), Length.FromInches(96)], new Money(600), VolumeUnit.BoardFoot), (10, 550), (20, 500));
        var sizes = OfferSize.Of(offer);

        var nine = StepPrices.Priced([new Purchase(sizes[0], 3)]);
        Assert.Equal(3 * 1800, nine.Sum(purchase => purchase.Cost.MinorUnits));
        var ten = StepPrices.Priced([new Purchase(sizes[0], 2), new Purchase(sizes[1], 1)]);
        Assert.Equal((2 * 1650) + 2200, ten.Sum(purchase => purchase.Cost.MinorUnits));
        var twenty = StepPrices.Priced([new Purchase(sizes[1], 5)]);
        Assert.Equal(5 * 2000, twenty.Sum(purchase => purchase.Cost.MinorUnits));
    }

    [Theory]
    [InlineData(false, 2, 500)]
    [InlineData(false, 3, 450)]
    [InlineData(true, 2, 500)]
    [InlineData(true, 3, 450)]
    public void Pieces_and_running_length_have_steps_too(bool running, int count, int unitPrice)
    {
        var (width, long3) = (Length.FromInches(5), Length.FromInches(36));
        var offer = running
            ? Ash(new ByRunningLength(width, [long3], new Money(500), RunningUnit.Foot), (9, 450))
            : Ash(new ByThePiece(width, long3, new Money(500)), (3, 450));
        Assert.Equal(new Money(unitPrice), StepPrices.UnitPrice(offer, [(OfferSize.Of(offer)[0], count)]));
    }

    [Fact]
    public void More_never_costs_less_a_unit_than_the_last_step_nor_more_than_the_first_price() =>
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 60], Gen.Int[1, 12]).Sample((few, more, quarters) =>
        {
            var offer = Ash(new ByVolume([Length.FromInches(0, quarters, 4) + Length.FromInches(2)], [Length.FromInches(80)], new Money(600), VolumeUnit.BoardFoot), (10, 550), (30, 500));
            var size = OfferSize.Of(offer)[0];
            var (less, greater) = (StepPrices.UnitPrice(offer, [(size, few)]), StepPrices.UnitPrice(offer, [(size, few + more)]));
            return greater.CompareTo(less) <= 0 && greater >= new Money(500) && less <= new Money(600);
        });

    [Theory]
    [InlineData(10, 600, "#/steps/0/price")]
    [InlineData(0, 500, "#/steps/0/from")]
    [InlineData(2_000_000, 500, "#/steps/0/from")]
    public void A_step_that_makes_nothing_cheaper_is_refused(int from, int price, string pointer) => Assert.Contains(
        OfferRules.Check(Ash(new ByVolume([Length.FromInches(6)], [Length.FromInches(72)], new Money(600), VolumeUnit.BoardFoot), (from, price))),
        fault => fault.Pointer == pointer);

    private static Offer Ash(OfferForm form, params (int From, int Price)[] steps) => new()
    {
        Id = "yard/ash",
        Supplier = "yard",
        Species = "white-ash",
        Thickness = Length.FromInches(1),
        Form = form,
        Steps = [.. steps.Select(step => new PriceStep(step.From, new Money(step.Price)))],
    };
}
