using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Benchmarks;

/// <summary>
/// All classes of problems in one table: random shops, the demo's designs, published problems. Times, money, bound and gap, what the rivals pay, peak
/// memory. Every class runs in a process of its own, so that its memory is its own.
/// </summary>
/// <param name="demo">The folder of the demo.</param>
/// <param name="published">A folder of published problems, a class for each folder in it; none if null.</param>
/// <param name="most">The most problems of a class; of published ones they are spread over the class.</param>
/// <param name="budget">The time for one plan, and for a rival that has a solver.</param>
internal sealed class OverviewTable(string demo, string? published, int most, TimeSpan budget)
{
    private const string Heading =
        "class                              plans  boards  parts  first s   all s  proved       money       bound  gap %  best-fit +%  stronger +%  textbook +%  faults  peak MB";

    /// <summary>With more boards the rivals take longer than anyone would wait.</summary>
    private const int MostBoardsForRivals = 1000;

    private sealed record Row(PlanningProblem Problem, Plan Plan, double Seconds, int Faults, (long? Plain, long? Strong, long? Shelves) Rivals);

    /// <summary>Prints the whole table, each row from a process of its own.</summary>
    public void Print(TextWriter output)
    {
        output.WriteLine(Heading);
        foreach (var (name, _) in Classes())
        {
            using var child = Process.Start(new ProcessStartInfo(
                Environment.ProcessPath!,
                ["row", name, demo, published ?? "-", most.ToString(CultureInfo.InvariantCulture), budget.TotalSeconds.ToString(CultureInfo.InvariantCulture)])
            {
                RedirectStandardOutput = true,
            })!;
            output.Write(child.StandardOutput.ReadToEnd());
            child.WaitForExit();
            if (child.ExitCode != 0)
            {
                output.WriteLine($"{name}: ended with exit code {child.ExitCode.ToString(CultureInfo.InvariantCulture)}");
            }
        }

        output.WriteLine("money and bound are sums over a class, in minor units or boards; +% is what a rival pays more in the mean where it finds a plan and the planner buys anything (-: nowhere)");
    }

    /// <summary>Prints the row of one class.</summary>
    public void PrintRow(string name, TextWriter output)
    {
        var rows = Classes().Single(each => each.Name == name).Problems().Select(Plan).ToList();
        using var self = Process.GetCurrentProcess();
        var plans = rows.ConvertAll(row => row.Plan);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-34} {rows.Count,5} {rows.Average(row => row.Problem.Stock.Sum(board => board.Quantity)),7:0} {rows.Average(row => row.Problem.Design.Parts.Count),6:0}"
            + $" {plans.Average(plan => plan.Run.FirstPlanAfter.TotalSeconds),8:0.00} {rows.Average(row => row.Seconds),7:0.00} {plans.Count(plan => plan.WoodCost == plan.WoodBound),7}"
            + $" {plans.Sum(plan => plan.WoodCost.MinorUnits),11} {plans.Sum(plan => plan.WoodBound.MinorUnits),11} {100 * plans.Average(plan => plan.Gap),6:0.00}"
            + $" {More(rows, row => row.Rivals.Plain),12} {More(rows, row => row.Rivals.Strong),12} {More(rows, row => row.Rivals.Shelves),12}"
            + $" {rows.Sum(row => row.Faults),7} {self.PeakWorkingSet64 / 1_048_576,8}"));
    }

    private IEnumerable<(string Name, Func<IEnumerable<PlanningProblem>> Problems)> Classes()
    {
        foreach (var (name, create) in ClassTable.Classes)
        {
            yield return (name, () => Enumerable.Range(1, most).Select(create));
        }

        yield return ("demo", () => DemoShop.Designs(demo).Take(most).Select(name => DemoShop.Problem(demo, DemoShop.Usual(DemoShop.Design(demo, name)))));
        foreach (var folder in published is null ? Array.Empty<string>() : [.. Directory.EnumerateDirectories(published).Order(StringComparer.Ordinal)])
        {
            var files = Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal).ToList();
            yield return (Path.GetFileName(folder), () => Spread(files).Select(path => new PublishedFile(Length.Zero).Read(path)?.Problem).OfType<PlanningProblem>());
        }
    }

    private IEnumerable<string> Spread(List<string> files) =>
        files.Count <= most ? files : Enumerable.Range(0, most).Select(at => files[at * files.Count / most]);

    private Row Plan(PlanningProblem problem)
    {
        var watch = Stopwatch.StartNew();
        var plan = Planner.Solve(problem, new PlanLimits(budget));
        var seconds = watch.Elapsed.TotalSeconds;
        return new Row(
            problem, plan, seconds, Auditor.Audit(problem, plan).Count,
            plan.Missing.Count > 0 || problem.Stock.Sum(board => board.Quantity) > MostBoardsForRivals ? default : RivalTable.Columns(problem, budget));
    }

    private static string More(List<Row> rows, Func<Row, long?> rival)
    {
        var met = rows.Where(row => rival(row) is not null && row.Plan.WoodCost > Money.Zero).ToList();
        return met.Count == 0 ? "-" : met.Average(row => 100.0 * (rival(row)!.Value - row.Plan.WoodCost.MinorUnits) / row.Plan.WoodCost.MinorUnits).ToString("0.0", CultureInfo.InvariantCulture);
    }
}
