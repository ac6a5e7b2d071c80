using System.Diagnostics;
using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Benchmarks;

/// <summary>Published problems: how many boards or how much money, against the optimum that the file names.</summary>
internal static class PublishedTable
{
    public static void Print(string folder, TimeSpan budget, TextWriter output)
    {
        output.WriteLine("problem                          s       cost      bound   published  verdict");
        var (reached, all) = (0, 0);
        foreach (var path in Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            if (PublishedFile.Read(path) is not { } known)
            {
                continue;
            }

            var watch = Stopwatch.StartNew();
            var plan = Planner.Solve(known.Problem, new PlanLimits(budget));
            var elapsed = watch.Elapsed;
            var verdict = Verdict(known.Least, plan, Auditor.Audit(known.Problem, plan).Count);
            all++;
            reached += verdict == "reached" ? 1 : 0;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{known.Name,-28} {elapsed.TotalSeconds,6:0.00} {plan.WoodCost.MinorUnits,10} {plan.WoodBound.MinorUnits,10} {known.Least.MinorUnits,11}  {verdict}"));
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{reached} of {all} reached"));
    }

    private static string Verdict(Money least, Plan plan, int faults) =>
        faults > 0 ? string.Create(CultureInfo.InvariantCulture, $"{faults} faults")
        : plan.Missing.Count > 0 ? "incomplete"
        : plan.WoodBound > least ? "bound too high"
        : plan.WoodCost < least ? "better than published"
        : plan.WoodCost > least ? string.Create(CultureInfo.InvariantCulture, $"{(plan.WoodCost - least).MinorUnits} more")
        : "reached";
}
