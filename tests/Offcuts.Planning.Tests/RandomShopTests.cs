using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Larger random shops than those of <see cref="AuditedShops"/>, of all kinds by turns.</summary>
public class RandomShopTests
{
    [Fact]
    public void Every_plan_of_a_tiny_shop_passes_the_auditor() => Check(Enumerable.Range(1, 200), ShopScale.Tiny, TimeSpan.FromMilliseconds(80));

    [Fact]
    public void Every_plan_of_a_workshop_passes_the_auditor() => Check(Enumerable.Range(1, 6), ShopScale.Workshop, TimeSpan.FromMilliseconds(400));

    private static void Check(IEnumerable<int> seeds, ShopScale scale, TimeSpan budget)
    {
        var faults = new List<string>();
        foreach (var seed in seeds)
        {
            var problem = RandomShops.Create(seed, RandomShops.Kind(seed, scale));
            var plan = Planner.Solve(problem, new PlanLimits(budget));
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => FormattableString.Invariant($"seed {seed}: {finding}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }
}
