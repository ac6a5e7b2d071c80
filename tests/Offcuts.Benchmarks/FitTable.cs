using System.Diagnostics;
using System.Globalization;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Planning.Fitting;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>
/// Which of many designs fits a rack: how long the first ten places and all of them take, from nothing and after one board has changed, and whether the
/// first ten are those of planning every design in full.
/// </summary>
internal static class FitTable
{
    private static readonly TimeSpan InFull = PlanLimits.Default.Budget;

    /// <summary>Ranks a library against a rack.</summary>
    public static void Print(int designs, int boards, bool inFull, TextWriter output)
    {
        var library = RandomLibrary.Create(1, boards, designs);
        foreach (var order in Enum.GetValues<FitOrder>())
        {
            var notebook = new FitNotebook();
            Rank("first ten", library, library.Shop.Stock, order, 10, new FitNotebook(), output);
            var all = Rank("all", library, library.Shop.Stock, order, designs, notebook, output);
            Rank("all, nothing changed", library, library.Shop.Stock, order, designs, notebook, output);
            var used = all[0].Outcome.Uses[0].BoardId;
            Rank($"all, board {used} gone", library, [.. library.Shop.Stock.Where(board => board.Id != used)], order, designs, notebook, output);
            var shorter = library.Shop.Stock.Select(board => board.Id == used ? board with { Size = board.Size with { Length = board.Size.Length - Length.FromInches(6) } } : board);
            Rank($"all, board {used} shorter", library, [.. shorter], order, designs, notebook, output);
            if (inFull)
            {
                Compare(library, order, [.. all.Take(10)], output);
            }
        }
    }

    private static List<FitPlace> Rank(string name, RandomLibrary library, IReadOnlyList<Board> stock, FitOrder order, int limit, FitNotebook notebook, TextWriter output)
    {
        var places = new List<FitPlace>();
        var (firstTen, watch, worked) = (TimeSpan.Zero, Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        var search = new FitSearch(
            new FitStock(library.Shop with { Stock = stock }), new FitQuestion { Order = order, Limit = limit }, notebook,
            (_, problem, limits, cancellation) => Planner.Solve(problem, limits, null, cancellation));
        var summary = search.Run(
            library.Designs,
            told =>
            {
                if (told is FitPlace place)
                {
                    places.Add(place);
                    firstTen = places.Count == 10 ? watch.Elapsed : firstTen;
                }
            },
            CancellationToken.None, CancellationToken.None);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{order,-8} {name,-26} {places.Count,4} places in {watch.Elapsed.TotalSeconds:0.00} s ({(Environment.CpuUsage.TotalTime - worked).TotalSeconds:0.00} s of processors), ten in {firstTen.TotalSeconds:0.00} s; {summary.Progress.Remembered} remembered, {summary.Progress.Planned} plans; {places.Count(place => place.Outcome.Cost == Money.Zero)} cost nothing, {places.Count(place => place.Outcome.MissingCount > 0)} lack wood"));
        return places;
    }

    private static void Compare(RandomLibrary library, FitOrder order, List<FitPlace> ten, TextWriter output)
    {
        var stock = new FitStock(library.Shop);
        var watch = Stopwatch.StartNew();
        var planned = library.Designs.AsParallel().WithDegreeOfParallelism(2).Select(design =>
        {
            var plan = Planner.Solve(library.Shop with { Design = design.Design }, new PlanLimits(InFull));
            return (Figures: FitOutcome.Of(plan, design.Design, PlanEffort.Thorough).Figures(stock.WeightOf), design.Reference);
        }).Order(new FitOrdering(order)).Take(10).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{order,-8} every design in full takes {watch.Elapsed.TotalSeconds:0} s"));
        foreach (var (place, full) in ten.Zip(planned))
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  {place.Number,2} {place.Design.Reference} {place.Figures.Cost.MinorUnits,7} {place.Figures.Eaten,9:0}   {(full.Reference == place.Design.Reference ? "=" : "!")} {full.Reference} {full.Figures.Cost.MinorUnits,7} {full.Figures.Eaten,9:0}"));
        }
    }
}
