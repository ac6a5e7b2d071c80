using System.Globalization;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>
/// How the time to a plan of fixed quality grows with the number of boards, the design staying the same: the time to the first plan, and to the first
/// whose gap is at most <see cref="Quality"/>. Next to each the time that n log n would give from the smallest number on.
/// </summary>
internal static class GrowthTable
{
    private const decimal Quality = 0.01m;
    private static readonly int[] Sizes = [300, 1000, 3000, 10_000];

    /// <summary>Prints a row for each number of boards: means over so many shops with enough stock.</summary>
    public static void Print(int shops, TimeSpan budget, TextWriter output)
    {
        output.WriteLine("boards  first s  n log n  gap <= 1 % s  n log n  reached");
        (double First, double Good)? start = null;
        foreach (var boards in Sizes)
        {
            var times = Enumerable.Range(1, shops).Select(seed => Times(RandomShops.Create(
                seed, new ShopKind(ShopScale.Large, Metric: seed % 4 >= 2, Boards: boards)), budget)).ToList();
            var good = times.Where(time => time.Good is not null).Select(time => time.Good!.Value).DefaultIfEmpty(double.NaN).Average();
            var first = times.Average(time => time.First);
            start ??= (first, good);
            var growth = boards * Math.Log(boards) / (Sizes[0] * Math.Log(Sizes[0]));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{boards,6} {first,8:0.00} {start.Value.First * growth,8:0.00} {good,13:0.00} {start.Value.Good * growth,8:0.00}  {times.Count(time => time.Good is not null)} of {shops}"));
        }
    }

    private static (double First, double? Good) Times(PlanningProblem problem, TimeSpan budget)
    {
        double? good = null;
        var plan = Planner.Solve(problem, new PlanLimits(budget), progress =>
        {
            if (good is null && progress.Cost is { } cost && (cost - progress.Bound).MinorUnits <= Quality * cost.MinorUnits)
            {
                good = progress.Elapsed.TotalSeconds;
            }
        });
        return (plan.Run.FirstPlanAfter.TotalSeconds, good);
    }
}
