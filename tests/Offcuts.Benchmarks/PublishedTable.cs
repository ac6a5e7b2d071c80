using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Published problems: how many boards or how much money, against the optimum that the file names.</summary>
internal static class PublishedTable
{
    private sealed record Row(string Group, string Verdict, bool IsProved, double Seconds);

    /// <summary>Plans every problem of a folder and its folders, with a kerf of half a unit of length if asked for, and sums up each folder.</summary>
    public static void Print(string folder, TimeSpan budget, bool withKerf, TextWriter output)
    {
        output.WriteLine("problem                          s       cost      bound   published  verdict");
        var file = new PublishedFile(withKerf ? PublishedFile.HalfUnit : Length.Zero);
        var rows = new List<Row>();
        foreach (var path in Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            if (file.Read(path) is not { } known)
            {
                continue;
            }

            var watch = Stopwatch.StartNew();
            var plan = Planner.Solve(known.Problem, new PlanLimits(budget));
            var row = new Row(
                Path.GetFileName(Path.GetDirectoryName(path)!), Verdict(known, plan, Auditor.Audit(known.Problem, plan).Count), plan.Status == PlanStatus.Proved, watch.Elapsed.TotalSeconds);
            rows.Add(row);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{known.Name,-28} {row.Seconds,6:0.00} {plan.WoodCost.MinorUnits,10} {plan.WoodBound.MinorUnits,10} {known.Least.MinorUnits,11}  {row.Verdict}{(row.IsProved ? ", proved" : "")}"));
        }

        foreach (var group in rows.GroupBy(row => row.Group).Append(rows.GroupBy(_ => "all").FirstOrDefault()).OfType<IGrouping<string, Row>>())
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{group.Key,-20} {group.Count(row => row.Verdict == Reached),4} of {group.Count(),4} reached, {group.Count(row => row.IsProved),4} proved, {group.Count(row => row.Verdict.Contains(Worse, StringComparison.Ordinal)),3} worse than two stages, {group.Average(row => row.Seconds):0.00} s in the mean"));
        }
    }

    private const string Reached = "reached";
    private const string Worse = "worse than two stages";

    private static string Verdict(PublishedProblem known, Plan plan, int faults) =>
        faults > 0 ? string.Create(CultureInfo.InvariantCulture, $"{faults} faults")
        : plan.Missing.Count > 0 ? "incomplete"
        : plan.WoodBound > known.Least && !known.IsOfAnyStages ? "bound too high"
        : plan.WoodCost < known.Least ? "better than published"
        : plan.WoodCost == known.Least ? Reached
        : string.Create(CultureInfo.InvariantCulture, $"{(plan.WoodCost - known.Least).MinorUnits} more{(known.TwoStages is { } other && plan.WoodCost > other ? $", {Worse}" : "")}");
}
