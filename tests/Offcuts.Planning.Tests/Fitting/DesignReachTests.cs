using Offcuts.Domain;
using Offcuts.Planning.Fitting;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Fitting;

public class DesignReachTests
{
    [Fact]
    public void No_plan_comes_to_better_figures_than_areas_allow()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var shop = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny));
            var problem = seed % 3 == 0 ? RandomRecipes.Apply(shop, seed, shop.Shop.Unit == DisplayUnit.Millimetre) : seed % 3 == 1 ? RandomFreedom.Add(shop, seed) : RandomCondition.Applied(shop, seed);
            var stock = Stock(problem);
            var reach = DesignReach.Of(stock, new SavedDesign("design", "", problem.Design));
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
            var found = FitOutcome.Of(plan, problem.Design, PlanEffort.Thorough).Figures(stock.WeightOf);
            foreach (var order in Enum.GetValues<FitOrder>())
            {
                Assert.True(new FitOrdering(order).Compare((reach.Optimistic, "design"), (found, "design")) <= 0, $"seed {seed}: {found} ranks before {reach.Optimistic}");
            }

            Assert.True(reach.Optimistic.Missing <= found.Missing, $"seed {seed}");
            Assert.True(reach.Optimistic.Eaten >= found.Eaten, $"seed {seed}: {found.Eaten} is more than {reach.Optimistic.Eaten}");
        }
    }

    [Fact]
    public void What_a_design_cannot_touch_is_in_no_plan_of_it()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var problem = RandomCondition.Applied(RandomDefects.Add(RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny)), seed), seed);
            var reach = DesignReach.Of(Stock(problem), new SavedDesign("design", "", problem.Design));
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
            Assert.All(plan.Boards, board => Assert.True(
                board.BoardId is { } id ? reach.Boards.Any(other => other.Id == id) : reach.Offers.Any(offer => offer.Id == board.OfferId), $"seed {seed}"));
        }
    }

    [Fact]
    public void Areas_bound_the_money_by_what_stock_lacks_and_what_it_cannot_give()
    {
        // A sheet of 18 x 100 x 1000 for 10.00, and one of half that length on the rack; milling and kerf take nothing.
        var problem = PublishedProblems.Empty(0) with
        {
            Stock = [Sheet("AAA", 500, 100)],
            Offers = [PublishedProblems.CreateOffer("sheet", 1000, 100, 1000)],
            Design = new Design
            {
                Name = "shelf",
                Parts = [PublishedProblems.CreatePart("long", 800, 50, 1), PublishedProblems.CreatePart("short", 400, 100, 2)],
                Items = [new BoughtItem("pegs", 4, new Money(25))],
            },
        };
        var reach = DesignReach.Of(Stock(problem), new SavedDesign("shelf", "", problem.Design));

        // Too long for the rack: 800 x 50 of 1000 x 100, so 0.4 of a sheet. Of 2 x 400 x 100 the rack gives 500 x 100, the rest is 0.3 of a sheet.
        Assert.Equal(new Money(400 + 300 + 100), reach.Optimistic.Cost);
        Assert.Equal(0, reach.Optimistic.Missing);
        Assert.Equal(2m / 3, reach.Optimistic.ShareFromStock, 5);
    }

    internal static FitStock Stock(PlanningProblem problem) => new(problem);

    internal static Board Sheet(string id, int length, int width) => new()
    {
        Id = id,
        Kind = BoardKind.Sheet,
        Species = "plate",
        Surface = Surface.Surfaced,
        Size = PublishedProblems.Size(length, width),
        LoggedAt = DateTimeOffset.UnixEpoch,
    };
}
