using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Deciding;

public class CheapestWayTests
{
    [Fact]
    public void It_is_the_cheapest_of_all_planned_in_full()
    {
        var compared = new[] { 11, 12, 13, 15 }.Sum(Compared);
        Assert.True(compared >= 8, $"Only {compared} ways were compared by proved plans.");
    }

    private static int Compared(int seed)
    {
        // Ways that leave out one part each, at prices of items that may outweigh it.
        var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny));
        PlanningProblem[] ways = [.. Enumerable.Range(0, Math.Min(4, problem.Design.Parts.Count)).Select(left => problem with
        {
            Design = problem.Design with
            {
                Parts = [.. problem.Design.Parts.Where((_, at) => at != left)],
                Items = [new BoughtItem("Hook", 1, new Money(100 * ((left * 7) % 5)))],
            },
        })];
        var chosen = -1;
        var found = CheapestWay.Find(ways, new PlanLimits(TimeSpan.FromSeconds(4)), Planner.Solve, way => chosen = way, null, CancellationToken.None);
        Assert.Equal(chosen, found.Way);
        var all = ways.Select(way => Planner.Solve(way, new PlanLimits(TimeSpan.FromSeconds(2)))).ToList();
        var (rank, compared) = (Rank(found.Plan), 0);
        foreach (var (way, plan) in all.Index())
        {
            // Said to be sure, no other may be better, nor as good and preferred.
            Assert.True(!found.IsSure || rank.CompareTo(Rank(plan)) < 0 || (rank == Rank(plan) && way >= found.Way), $"Way {way} is better than {found.Way}.");
            if (plan.Gap == 0 && found.Plan.Gap == 0)
            {
                compared++;
                Assert.True(rank.CompareTo(Rank(plan)) <= 0, $"Way {way} was overlooked.");
            }
        }

        return compared;
    }

    [Fact]
    public void Of_equal_ways_the_first_is_taken_and_known_to_be_no_worse()
    {
        var problem = RandomShops.Create(2, RandomShops.Kind(2, ShopScale.Tiny));
        var found = CheapestWay.Find([problem, problem, problem], new PlanLimits(TimeSpan.FromSeconds(3)), Planner.Solve, _ => { }, null, CancellationToken.None);
        Assert.Equal(0, found.Way);
        Assert.Equal(found.Plan.Status == PlanStatus.Proved, found.IsSure);
    }

    private static (int Missing, long Cost) Rank(Plan plan) => (plan.MissingCount, plan.TotalCost.MinorUnits);
}
