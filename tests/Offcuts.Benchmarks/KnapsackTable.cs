using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>Guillotine knapsacks of two stages by the pricing alone (<see cref="PricedPlate"/>), for either first cut, beside the published optima.</summary>
internal static class KnapsackTable
{
    /// <summary>Prints a row for each knapsack of a folder and its folders, with a kerf of half a unit of length if asked for, and how many optima are found.</summary>
    public static void Print(string folder, bool withKerf, TextWriter output)
    {
        output.WriteLine("knapsack     rip first  published       s  crosscut first  published       s");
        var (met, all) = (0, 0);
        foreach (var path in Directory.EnumerateFiles(folder, "*.json", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            using var document = JsonDocument.Parse(File.ReadAllText(path));
            var root = document.RootElement;
            if (!root.TryGetProperty("opt_2stage_H", out var along) || !root.TryGetProperty("opt_2stage_V", out var across))
            {
                continue;
            }

            var problem = new PublishedFile(withKerf ? PublishedFile.HalfUnit : Length.Zero).Read(path)!.Problem;
            var (ripped, crosscut) = (Best(problem, ripFirst: true), Best(problem, ripFirst: false));
            all += 2;
            met += (ripped.Value == along.GetInt64() ? 1 : 0) + (crosscut.Value == across.GetInt64() ? 1 : 0);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{Path.GetFileNameWithoutExtension(path),-10} {ripped.Value,11} {along.GetInt64(),10} {ripped.Seconds,7:0.00} {crosscut.Value,15} {across.GetInt64(),10} {crosscut.Seconds,7:0.00}"));
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{met} of {all} optima found by the pricing alone"));
    }

    private static (long? Value, double Seconds) Best(PlanningProblem problem, bool ripFirst)
    {
        var watch = Stopwatch.StartNew();
        return (PricedPlate.Best(problem, ripFirst), watch.Elapsed.TotalSeconds);
    }
}
