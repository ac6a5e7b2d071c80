using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Random shops by class, small and large, with enough stock and without: how many plans are proved, and how far the others may be from the best; and how far the worth that they use up may be from the least for the money.</summary>
internal static class ClassTable
{
    /// <summary>The classes by name, and the problem of a class for a seed.</summary>
    public static IReadOnlyList<(string Name, Func<int, PlanningProblem> Create)> Classes { get; } =
    [
        ("40 boards, 12 parts, enough", seed => RandomShops.Create(seed, Kind(ShopScale.Workshop, seed, mustBuy: false))),
        ("40 boards, 12 parts, must buy", RandomShops.MustBuy),
        ("300 boards, 40 parts, enough", seed => RandomShops.Create(seed, Kind(ShopScale.Large, seed, mustBuy: false))),
        ("300 boards, 40 parts, must buy", seed => RandomShops.Create(seed, Kind(ShopScale.Large, seed, mustBuy: true))),
        ("10000 boards, 60 parts, enough", seed => RandomShops.Create(seed, Kind(ShopScale.Huge, seed, mustBuy: false))),
        ("10000 boards, 60 parts, must buy", seed => RandomShops.Create(seed, Kind(ShopScale.Huge, seed, mustBuy: true))),
    ];

    /// <summary>Plans the shops of each class with these seeds, and prints a row for each and one for the class.</summary>
    public static void Print(IReadOnlyList<int> seeds, TimeSpan budget, string? only, TextWriter output)
    {
        output.WriteLine("class                             seed  first s  all s  status           cost      bound   gap %       used      least   gap %  faults");
        var (plans, proved, gaps) = (0, 0, 0.0m);
        foreach (var (name, create) in Classes.Where(each => only is null || each.Name.Contains(only, StringComparison.Ordinal)))
        {
            var done = seeds.Select(seed => Row(name, seed, create(seed), budget, output)).ToList();
            Sum(name, done, output);
            plans += done.Count;
            proved += done.Count(plan => plan.IsProved);
            gaps += done.Sum(plan => plan.Gap);
        }

        using var self = Process.GetCurrentProcess();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"all: {100.0 * proved / plans:0} % of {plans} proved, mean gap {100 * gaps / plans:0.00} %, peak memory {self.PeakWorkingSet64 / 1_048_576} MB"));
    }

    private static ShopKind Kind(ShopScale scale, int seed, bool mustBuy) => RandomShops.Kind(seed, scale) with { MustBuy = mustBuy };

    private static (bool IsProved, decimal Gap, decimal? WorthGap) Row(string name, int seed, PlanningProblem problem, TimeSpan budget, TextWriter output)
    {
        var watch = Stopwatch.StartNew();
        var plan = Planner.Solve(problem, new PlanLimits(budget) { BoundsWorth = true });
        var elapsed = watch.Elapsed;
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-32} {seed,5} {plan.Run.FirstPlanAfter.TotalSeconds,8:0.00} {elapsed.TotalSeconds,6:0.00}  {plan.Status,-10} {plan.WoodCost.MinorUnits,10} {plan.WoodBound.MinorUnits,10} {100 * plan.Gap,7:0.00} {plan.WorthUsed.MinorUnits,10} {plan.WorthBound?.MinorUnits,10} {100 * WorthGap(plan),7:0.00} {Auditor.Audit(problem, plan).Count,7}"));

        // Where not everything can be had, the rest is proved if its bound is its cost.
        return (plan.WoodCost == plan.WoodBound, plan.Gap, WorthGap(plan));
    }

    /// <summary>The gap of the worth as a share of what is consumed or returned, whichever is more: what is used up may be next to nothing.</summary>
    private static decimal? WorthGap(Plan plan) =>
        (decimal?)plan.WorthGap?.MinorUnits / Math.Max(1, Math.Max(plan.WorthConsumed.MinorUnits, plan.WorthReturned.MinorUnits));

    private static void Sum(string name, List<(bool IsProved, decimal Gap, decimal? WorthGap)> plans, TextWriter output) => output.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{name,-32}   all: {plans.Count(plan => plan.IsProved)} of {plans.Count} proved, mean gap {100 * plans.Average(plan => plan.Gap):0.00} %, worst {100 * plans.Max(plan => plan.Gap):0.00} %, {OfWorth(plans)}"));

    private static string OfWorth(List<(bool IsProved, decimal Gap, decimal? WorthGap)> plans) => plans.Exists(plan => plan.WorthGap is not null)
        ? string.Create(CultureInfo.InvariantCulture, $"of the worth mean {100 * plans.Average(plan => plan.WorthGap):0.0} % in {plans.Count(plan => plan.WorthGap is not null)}")
        : "the worth has no bound";
}
