using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>What must hold between the plans of two problems of which one is the other changed. Judged where both are proved to be the best.</summary>
public class MetamorphicTests
{
    private static readonly TimeSpan Budget = TimeSpan.FromMilliseconds(300);

    [Fact]
    public void One_more_board_is_never_dearer() => Compare(
        problem => problem with { Stock = [.. problem.Stock, problem.Stock[0] with { Id = "YYY", Quantity = 1 }] },
        (before, after) => after <= before);

    [Fact]
    public void One_more_offer_is_never_dearer() => Compare(
        problem => problem with
        {
            Offers = [.. problem.Offers, new Offer
            {
                Id = "other/ash", Supplier = "other", Species = "white-ash", Thickness = Length.FromInches(1), Form = new ByThePiece(Length.FromInches(8), Length.FromInches(60), new Money(1500)),
            }],
        },
        (before, after) => after <= before);

    [Fact]
    public void Another_order_and_other_names_cost_the_same() => Compare(
        problem => problem with
        {
            Stock = [.. problem.Stock.Reverse().Select(board => board with { Id = $"X{board.Id}" })],
            Offers = [.. problem.Offers.Reverse().Select(offer => offer with { Id = $"x/{offer.Id}" })],
            Design = problem.Design with { Parts = [.. problem.Design.Parts.Reverse().Select(part => part with { Name = $"x {part.Name}" })] },
        },
        (before, after) => after == before);

    private static void Compare(Func<PlanningProblem, PlanningProblem> change, Func<Money, Money, bool> holds)
    {
        var judged = 0;
        foreach (var seed in Enumerable.Range(2000, 60))
        {
            var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny));
            if (problem.Stock.Count == 0)
            {
                continue;
            }

            var before = Planner.Solve(problem, new PlanLimits(Budget));
            var after = Planner.Solve(change(problem), new PlanLimits(Budget));
            if (before.Status == PlanStatus.Proved && after.Status == PlanStatus.Proved)
            {
                judged++;
                Assert.True(
                    holds(before.WoodCost, after.WoodCost), $"seed {seed}: {before.WoodCost.MinorUnits} before, {after.WoodCost.MinorUnits} after the change");
            }
        }

        Assert.True(judged >= 10, $"Only {judged} shops had proved plans before and after.");
    }
}
