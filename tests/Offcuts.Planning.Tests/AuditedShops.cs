using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>
/// Plans of random small shops, each given to the auditor. The classes below run side by side; a fault names the seed and kind for <see cref="RandomShops.Create"/>.
/// </summary>
public abstract class AuditedShops(ShopScale scale, bool metric, TimeSpan budget)
{
    private const int BlockSize = 150;

    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 8)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_plan_passes_the_auditor(int block)
    {
        var faults = new List<string>();
        var (problems, plans) = (new List<PlanningProblem>(), new List<Plan>());
        foreach (var seed in Enumerable.Range(1 + (block * BlockSize), BlockSize))
        {
            var kind = new ShopKind(scale, MustBuy: seed % 2 == 1, metric);
            var problem = RandomShops.Create(seed, kind);
            var plan = Planner.Solve(problem, new PlanLimits(budget));
            problems.Add(problem);
            plans.Add(plan);
            faults.AddRange(Faults(problem, plan).Select(fault => string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {kind}: {fault}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        AssertVaried(problems);
        AssertVaried(plans);
    }

    private static IEnumerable<string> Faults(PlanningProblem problem, Plan plan)
    {
        foreach (var finding in Auditor.Audit(problem, plan))
        {
            yield return finding.ToString();
        }

        // The auditor checks these too; they are what the rest of the house relies on most.
        if (plan.WoodCost < plan.WoodBound || plan.WoodBound < Money.Zero)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"cost {plan.WoodCost.MinorUnits}, bound {plan.WoodBound.MinorUnits}");
        }

        if (plan.Status == PlanStatus.Incomplete != plan.Missing.Count > 0)
        {
            yield return $"{plan.Status} with {plan.Missing.Count} missing";
        }
    }

    // A generator that stopped making some kind of shop would make this check hollow.
    private static void AssertVaried(List<PlanningProblem> problems)
    {
        Assert.Contains(problems, problem => problem.Shop.Kerf == Length.Zero);
        Assert.Contains(problems, problem => problem.Shop.Kerf > new Shop().Kerf);
        Assert.Contains(problems, problem => problem.Design.Parts.Any(part => part.Grain == Grain.Free));
        Assert.Contains(problems, problem => problem.Shop.Recut);
        Assert.Contains(problems, problem => !problem.Shop.Recut);
        Assert.Contains(problems, problem => problem.Stock.Count == 0 && problem.Offers.Count > 0);
        Assert.Contains(problems, problem => problem.Offers.Any(offer => offer.Available > 0));
        Assert.Contains(problems, problem => problem.Design.Groups.Any(group => group is { OneSpecies: true, Species.Count: > 1 }
            && problem.Design.Parts.Any(part => part.Group == group.Name && part.Species.Count > 1)));
    }

    private static void AssertVaried(List<Plan> plans)
    {
        Assert.Contains(plans, plan => plan.Status == PlanStatus.Proved && plan.WoodCost > Money.Zero);
        Assert.Contains(plans, plan => plan.Status == PlanStatus.Proved && plan.WoodCost == Money.Zero && plan.Boards.Count > 0);
        Assert.Contains(plans, plan => plan.Status == PlanStatus.Incomplete);
        Assert.Contains(plans, plan => plan.GlueUps.Count > 0);
        Assert.Contains(plans, plan => plan.Boards.Any(board => board.Kind == BoardKind.Sheet));
        Assert.Contains(plans, plan => plan.Boards.Any(board => board.Defects.Count > 0));
        Assert.Contains(plans, plan => plan.Boards.Any(board => board.FirstCut == FirstCut.Rip));
        Assert.Contains(plans, plan => plan.Boards.Any(board => board.Pieces.OfType<LeftoverPiece>().Any()));
    }
}
