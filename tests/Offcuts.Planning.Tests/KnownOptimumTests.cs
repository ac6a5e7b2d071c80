using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Tests.Published;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

public class KnownOptimumTests
{
    // Most need far less; a busy machine may need more than usual.
    private static readonly TimeSpan Budget = TimeSpan.FromSeconds(20);

    public static TheoryData<string> OneLength => [.. PublishedProblems.OneLength.Select(problem => problem.Name)];

    public static TheoryData<string> WithKerf => [.. PublishedProblems.WithKerf.Select(problem => problem.Name)];

    public static TheoryData<string> TwoStages => [.. Knapsacks.Names];

    [Theory]
    [MemberData(nameof(OneLength))]
    public void Published_problems_take_the_fewest_boards(string name) => Reaches(PublishedProblems.OneLength.Single(problem => problem.Name == name));

    [Theory]
    [MemberData(nameof(WithKerf))]
    public void A_kerf_that_shortens_parts_and_boards_alike_changes_nothing(string name) => Reaches(PublishedProblems.WithKerf.Single(problem => problem.Name == name));

    [Theory]
    [MemberData(nameof(TwoStages))]
    public void Published_knapsacks_of_two_stages_are_filled(string name) => Reaches(Knapsacks.Get(name, kerf: 0));

    [Theory]
    [MemberData(nameof(TwoStages))]
    public void A_kerf_that_shortens_items_and_plate_alike_changes_nothing(string name) => Reaches(Knapsacks.Get(name, kerf: 0.5m));

    [Theory]
    [MemberData(nameof(TwoStages))]
    public void The_pricing_alone_finds_the_optimum_of_either_first_cut(string name)
    {
        var problem = Knapsacks.Get(name, kerf: 0).Problem;
        Assert.Equal(Knapsacks.Optima(name), (PricedPlate.Best(problem, ripFirst: true), PricedPlate.Best(problem, ripFirst: false)));
    }

    [Fact]
    public void Tiny_problems_agree_with_trying_everything()
    {
        var faults = new List<string>();
        foreach (var seed in Enumerable.Range(1, 150))
        {
            var problem = Exhaustive.Create(seed);
            var least = Exhaustive.LeastMoney(problem);
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(1)));
            if (plan.WoodCost != least || plan.WoodBound > least || Auditor.Audit(problem, plan).Count > 0)
            {
                faults.Add(FormattableString.Invariant(
                    $"seed {seed}: {plan.Status}, cost {plan.WoodCost.MinorUnits}, bound {plan.WoodBound.MinorUnits}, least {least.MinorUnits}"));
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static void Reaches(PublishedProblem known)
    {
        var plan = Planner.Solve(known.Problem, new PlanLimits(Budget));
        Assert.Empty(Auditor.Audit(known.Problem, plan));
        Assert.True(plan.WoodBound <= known.Least, $"bound {plan.WoodBound.MinorUnits} above the optimum {known.Least.MinorUnits}");
        Assert.Equal(known.Least, plan.WoodCost);
    }
}
