using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using PriceList = Offcuts.Planning.Pricing.PriceList;

namespace Offcuts.Benchmarks;

/// <summary>
/// Guillotine knapsacks of two stages by the pricing alone, without a plan: the best pattern of the plate at the profits as prices, for either first cut,
/// beside the published optima. What any pattern can be worth is known from the knapsacks that count an item too often; from there down all patterns that are worth
/// so much are listed until there is one.
/// </summary>
internal static class KnapsackTable
{
    private const int MostSteps = 200;
    private const int MostCells = 12_000;
    private const long MostEffort = 400_000_000;

    /// <summary>Prints a row for each knapsack of a folder and its folders, and how many optima are found.</summary>
    public static void Print(string folder, TextWriter output)
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

            var problem = new PublishedFile(Length.Zero).Read(path)!.Problem;
            var (ripped, crosscut) = (Best(problem, ripFirst: true), Best(problem, ripFirst: false));
            all += 2;
            met += (ripped.Value == along.GetInt64() ? 1 : 0) + (crosscut.Value == across.GetInt64() ? 1 : 0);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{Path.GetFileNameWithoutExtension(path),-10} {ripped.Value,11} {along.GetInt64(),10} {ripped.Seconds,7:0.00} {crosscut.Value,15} {across.GetInt64(),10} {crosscut.Seconds,7:0.00}"));
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{met} of {all} optima found by the pricing alone"));
    }

    /// <summary>The best value of a pattern of the plate; null if there is too much to list.</summary>
    private static (long? Value, double Seconds) Best(PlanningProblem problem, bool ripFirst)
    {
        var watch = Stopwatch.StartNew();
        var model = new ModelBuilder(problem).Build(Wanted.All(problem.Design));
        var plate = model.Boards.Single(board => board.Price == 0);
        var view = new BoardView(
            model, new OrientedProfile(plate.Profile, ripFirst, model.Kerf, (plate.Along, plate.Across), MostCells, roundDown: false), [plate]);
        var profits = problem.Offers.ToDictionary(offer => offer.Species, offer => (double)((ByThePiece)offer.Form).PricePerPiece.MinorUnits, StringComparer.Ordinal);
        var prices = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(row => profits[row.Name])], [.. model.Rows.Select(row => row.Needed)], 0);
        var most = view.Values(prices, [plate]).Single().Value;
        var effort = new ListingEffort(MostEffort, () => false);
        for (var step = 0; step <= MostSteps; step++)
        {
            var least = new Dictionary<BoardType, double> { [plate] = most * (1 - (0.5 * step * step / (MostSteps * MostSteps))) };
            if (view.Near(prices, [plate], least, effort) is not { } found)
            {
                return (null, watch.Elapsed.TotalSeconds);
            }

            if (found.Count > 0)
            {
                return ((long)found.Max(near => near.Value), watch.Elapsed.TotalSeconds);
            }
        }

        return (null, watch.Elapsed.TotalSeconds);
    }
}
