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
            foreach (var effort in new[] { PlanEffort.Settled, PlanEffort.Quick, PlanEffort.Glance })
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
        foreach (var effort in new[] { PlanEffort.Settled, PlanEffort.Quick, PlanEffort.Glance })
        {
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)) { Effort = effort });
            Assert.Equal((PlanStatus.Proved, Money.Zero), (plan.Status, plan.WoodCost));
        }
    }

    /// <summary>A settled plan uses up little more than a thorough one does, a quick one much more; both buy nothing, as the least does.</summary>
    [Fact]
    public void A_settled_plan_takes_care_of_the_wood()
    {
        var (settled, quick, thorough) = (0L, 0L, 0L);
        var library = RandomLibrary.Create(2, boards: 120, designs: 6, mostParts: 12);
        foreach (var design in library.Designs)
        {
            var problem = library.Shop with { Design = design.Design };
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)) { Effort = PlanEffort.Settled });
            Assert.Empty(Auditor.Audit(problem, plan));
            if (plan is { WoodCost.MinorUnits: 0, MissingCount: 0 })
            {
                settled += UsedUp(plan);
                quick += UsedUp(Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)) { Effort = PlanEffort.Quick }));
                thorough += UsedUp(Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5))));
            }
        }

        Assert.True(thorough > 0 && settled < 1.25 * thorough && settled < 0.9 * quick, $"{quick} used up by quick plans, {settled} by settled ones, {thorough} by thorough ones");
    }

    private static long UsedUp(Plan plan) => (plan.WorthConsumed - plan.WorthReturned).MinorUnits;

    private static int Missing(Plan plan) => plan.MissingCount;
}
