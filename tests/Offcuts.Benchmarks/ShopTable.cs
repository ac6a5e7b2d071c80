using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Random shops: how soon a plan is there, what it costs and how far it may be from the best. Every plan is audited.</summary>
internal static class ShopTable
{
    public static void Print(TextWriter output)
    {
        output.WriteLine($"class           seed  first s  all s  status           cost      bound   gap %  faults{RivalTable.Heading}");
        foreach (var (scale, seeds, seconds) in new[] { (ShopScale.Tiny, 20, 2.0), (ShopScale.Workshop, 10, 2.0), (ShopScale.Large, 4, 5.0) })
        {
            foreach (var seed in Enumerable.Range(1, seeds))
            {
                PrintRow(output, scale, seed, TimeSpan.FromSeconds(seconds));
            }
        }

        RivalTable.Print(50, TimeSpan.FromSeconds(2), output);
        using var self = Process.GetCurrentProcess();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"peak memory {self.PeakWorkingSet64 / 1_048_576} MB"));
    }

    private static void PrintRow(TextWriter output, ShopScale scale, int seed, TimeSpan budget)
    {
        var problem = RandomShops.Create(seed, RandomShops.Kind(seed, scale));
        var watch = Stopwatch.StartNew();
        var plan = Planner.Solve(problem, new PlanLimits(budget));
        var elapsed = watch.Elapsed;
        var faults = Auditor.Audit(problem, plan).Count;
        var (plain, strong, shelves) = RivalTable.Columns(problem, budget);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{scale,-14} {seed,5} {plan.Run.FirstPlanAfter.TotalSeconds,8:0.00} {elapsed.TotalSeconds,6:0.00}  {plan.Status,-10} {plan.WoodCost.MinorUnits,10} {plan.WoodBound.MinorUnits,10} {100 * plan.Gap,7:0.00} {faults,7} {RivalTable.Column(plain)} {RivalTable.Column(strong)} {RivalTable.Column(shelves)}"));
    }
}
