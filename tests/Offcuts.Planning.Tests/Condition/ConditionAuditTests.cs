using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Condition;

/// <summary>Plans of random shops with warped boards, ends and edges to trim and skip-planed stock, each given to the auditor.</summary>
public class ConditionAuditTests
{
    [Fact]
    public void Every_plan_of_worn_boards_passes_the_auditor()
    {
        var plans = Check(Enumerable.Range(1, 400), ShopScale.Smallest, TimeSpan.FromMilliseconds(40));
        // Each of the new things really happened.
        var pieces = plans.SelectMany(plan => plan.Boards.SelectMany(board => board.Pieces)).ToList();
        Assert.Contains(pieces, piece => piece is PartPiece { Loss.Thickness.Ticks: > 0 });
        Assert.Contains(pieces, piece => piece is PartPiece { Loss.Width.Ticks: > 0 });
        Assert.Contains(pieces, piece => piece is LeftoverPiece { Ends: { Left: EndState.Sound, Right: EndState.Checked } });
        Assert.Contains(pieces, piece => piece is LeftoverPiece { Ends: { Left: EndState.Unknown } });
        Assert.Contains(plans, plan => plan.Boards.Any(board => board.Surface == Surface.SkipPlaned));
        Assert.Contains(plans, plan => plan.Missing.Any(missing => missing.Reason == MissingReason.TooWarped));
    }

    [Fact]
    public void Every_plan_of_a_tiny_shop_with_worn_boards_passes_the_auditor() => Check(Enumerable.Range(500, 100), ShopScale.Tiny, TimeSpan.FromMilliseconds(60));

    private static List<Plan> Check(IEnumerable<int> seeds, ShopScale scale, TimeSpan budget)
    {
        var faults = new List<string>();
        var plans = new List<Plan>();
        foreach (var seed in seeds)
        {
            var problem = RandomCondition.Applied(RandomShops.Create(seed, RandomShops.Kind(seed, scale)), seed);
            var plan = Planner.Solve(problem, new PlanLimits(budget));
            plans.Add(plan);
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {finding}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        return plans;
    }

    /// <summary>Flat boards with sound ends give at least what the same boards give when they are warped and checked.</summary>
    [Fact]
    public void Boards_in_better_condition_never_cost_more() => Relation.NeverDearer(
        problem => problem with { Stock = [.. problem.Stock.Select(board => board with { Warp = default, Ends = Ends.BothSound })] },
        prepare: problem => RandomCondition.Applied(problem, problem.Stock.Sum(board => (int)(board.Size.Length.Ticks % 1000)) + problem.Design.Parts.Count));
}
