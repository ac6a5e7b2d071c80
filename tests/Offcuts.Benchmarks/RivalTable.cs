using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Benchmarks.Rivals;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Shops that must buy: the planner against its rivals. Every plan is audited.</summary>
internal static class RivalTable
{
    /// <summary>The columns of <see cref="Columns"/>.</summary>
    public const string Heading = "       a      a+       b";

    private sealed record Row(long Cost, long? Plain, long? Strong, long? Shelves);

    /// <summary>What the rivals pay in minor units, null where they find no plan for everything.</summary>
    public static (long? Plain, long? Strong, long? Shelves) Columns(PlanningProblem problem, TimeSpan budget) => (
        Cost(problem, BestFitDecreasing.Solve(problem, strengthened: false)),
        Cost(problem, BestFitDecreasing.Solve(problem, strengthened: true)),
        Cost(problem, TextbookAssignment.Solve(problem, budget)));

    /// <summary>A cost in a column.</summary>
    public static string Column(long? cost) => (cost?.ToString(CultureInfo.InvariantCulture) ?? "-").PadLeft(7);

    /// <summary>Prints a row for each shop and what they come to.</summary>
    public static void Print(int shops, TimeSpan budget, TextWriter output)
    {
        output.WriteLine($"must buy   seed       s    cost   bound{Heading}  faults");
        var rows = new List<Row>();
        for (var seed = 1; seed <= shops; seed++)
        {
            var problem = RandomShops.MustBuy(seed);
            var watch = Stopwatch.StartNew();
            var plan = Planner.Solve(problem, new PlanLimits(budget));
            var elapsed = watch.Elapsed.TotalSeconds;
            var faults = Auditor.Audit(problem, plan).Count;
            var (plain, strong, shelves) = Columns(problem, budget);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"           {seed,4} {elapsed,7:0.00} {plan.WoodCost.MinorUnits,7} {plan.WoodBound.MinorUnits,7} {Column(plain)} {Column(strong)} {Column(shelves)} {faults,7}"));
            rows.Add(new Row(plan.Missing.Count > 0 ? long.MaxValue : plan.WoodCost.MinorUnits, plain, strong, shelves));
        }

        Summarise("a  (best-fit decreasing)", [.. rows.Select(row => (row.Cost, row.Plain))], output);
        Summarise("a+ (best-fit, strengthened)", [.. rows.Select(row => (row.Cost, row.Strong))], output);
        Summarise("b  (shelf assignment)", [.. rows.Select(row => (row.Cost, row.Shelves))], output);
    }

    private static void Summarise(string rival, List<(long Cost, long? Rival)> rows, TextWriter output)
    {
        var met = rows.Where(row => row.Rival is not null).Select(row => (row.Cost, Rival: row.Rival!.Value)).ToList();
        var savings = met.Where(row => row.Rival > 0).Select(row => 100.0 * (row.Rival - row.Cost) / row.Rival).Order().ToList();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"against {rival,-28} {met.Count} shops: {met.Count(row => row.Cost < row.Rival)} cheaper, {met.Count(row => row.Cost == row.Rival)} alike, "
            + $"{met.Count(row => row.Cost > row.Rival)} dearer; saves {savings.ElementAtOrDefault(savings.Count / 2):0.0} % at the median"));
    }

    /// <summary>The money of a rival's plan, which must be as sound as the planner's own.</summary>
    private static long? Cost(PlanningProblem problem, Plan? plan)
    {
        if (plan is null)
        {
            return null;
        }

        var faults = Auditor.Audit(problem, plan);
        return faults.Count == 0
            ? plan.WoodCost.MinorUnits
            : throw new InvalidOperationException($"A rival's plan is not sound: {faults[0].Rule} {faults[0].Detail}");
    }
}
