using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

public class PlanEffortTests
{
    [Fact]
    public void Less_effort_gives_sound_plans_and_bounds_that_hold()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny));
            var thorough = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
            foreach (var effort in new[] { PlanEffort.Quick, PlanEffort.Glance })
            {
                var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)) { Effort = effort });
                Assert.Empty(Auditor.Audit(problem, plan));
                Assert.True(Missing(plan) >= Missing(thorough), $"seed {seed}, {effort}");
                if (Missing(plan) == Missing(thorough))
                {
                    Assert.True(plan.WoodBound <= thorough.WoodCost && thorough.WoodBound <= plan.WoodCost, $"seed {seed}, {effort}: {plan.WoodBound} to {plan.WoodCost}");
                }
            }
        }
    }

    [Fact]
    public void A_first_plan_that_buys_nothing_is_proved_at_once()
    {
        var problem = PublishedProblems.Empty(3) with
        {
            Stock = [new Board { Id = "AAA", Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced, Size = PublishedProblems.Size(900, 100), LoggedAt = DateTimeOffset.UnixEpoch }],
            Offers = [PublishedProblems.CreateOffer("sheet", 1000, 100, 500)],
            Design = new Design { Name = "rails", Parts = [PublishedProblems.CreatePart("rail", 400, 100, 2)] },
        };
        foreach (var effort in new[] { PlanEffort.Quick, PlanEffort.Glance })
        {
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)) { Effort = effort });
            Assert.Equal((PlanStatus.Proved, Money.Zero), (plan.Status, plan.WoodCost));
        }
    }

    private static int Missing(Plan plan) => plan.MissingCount;
}
