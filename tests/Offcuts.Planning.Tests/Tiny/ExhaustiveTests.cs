using System.Globalization;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// Tiny cases against trying everything. With two cuts, and for panels, the search that tries everything knows the same plans as the planner. With a third
/// cut the planner lets a blank lead each section, and the cutting rules allow more: there its plans are a part of all plans, so its cost is not below
/// the least money of all and its bound is not above that.
/// </summary>
public abstract class ExhaustiveTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMilliseconds(400));

    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 3)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void No_cost_bound_or_proof_contradicts_trying_everything(int block)
    {
        var faults = new List<string>();
        var proved = 0;
        foreach (var seed in Enumerable.Range(1 + (block * 100), 100))
        {
            var (problem, own, all) = Case(seed);
            var verdict = new TinyVerdict(Planner.Solve(problem, Limits), own, all);
            proved += verdict.Plan.Status == PlanStatus.Proved ? 1 : 0;
            if (verdict.Falsehood() is { } fault)
            {
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {fault}: {verdict}"));
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));

        // A proof is one of equality with the least money; what cannot be made at all has none.
        Assert.True(proved >= 60, $"Only {proved} of a hundred plans were proved.");
    }

    /// <summary>The problem of a seed, the least money of the planner's own kind of plans and of all.</summary>
    protected abstract (PlanningProblem Problem, int? Own, int? All) Case(int seed);

    protected static (PlanningProblem Problem, int? Own, int? All) Blanks(int seed, bool recut)
    {
        var tiny = TinyCases.Create(seed, recut);
        return (TinyCases.ToProblem(tiny), new TryEverything(tiny, SectionRule.LedByABlank).LeastMoney(), new TryEverything(tiny, SectionRule.AnyLength).LeastMoney());
    }
}

public sealed class TwoCutExhaustiveTests : ExhaustiveTests
{
    protected override (PlanningProblem Problem, int? Own, int? All) Case(int seed) => Blanks(seed, recut: false);
}

public sealed class ThreeCutExhaustiveTests : ExhaustiveTests
{
    protected override (PlanningProblem Problem, int? Own, int? All) Case(int seed) => Blanks(seed, recut: true);
}

public sealed class PanelExhaustiveTests : ExhaustiveTests
{
    protected override (PlanningProblem Problem, int? Own, int? All) Case(int seed)
    {
        var tiny = TinyPanel.Create(seed);
        var least = new TryEveryStrip(tiny).LeastMoney();
        return (tiny.ToProblem(), least, least);
    }
}
