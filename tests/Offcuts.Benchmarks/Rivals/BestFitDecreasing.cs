using System.Diagnostics;
using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>
/// The first rival: best-fit decreasing assignment, repeated for every choice of species, many orders of the jobs and every policy; the cheapest
/// counts. It uses stock first and buys for each part what is cheapest for the area used. Strengthened, it also looks how well the parts behind
/// would fill what it buys, and in the end for a cheaper size for every bought board.
/// </summary>
internal static class BestFitDecreasing
{
    private static readonly Func<Job, double>[] Sizes =
    [
        job => (double)job.Finished.Face.SquareTicks,
        job => job.Finished.Length.Ticks,
        job => job.Finished.Width.Ticks,
        job => (job.Finished.Length + job.Finished.Width).Ticks,
        job => Math.Max(job.Finished.Length.Ticks, job.Finished.Width.Ticks),
    ];

    /// <summary>The cheapest plan of all assignments; null if none makes everything.</summary>
    public static Plan? Solve(PlanningProblem problem, bool strengthened)
    {
        var watch = Stopwatch.StartNew();
        return Boards(problem, strengthened) is { } boards ? RivalPlan.Write(problem, boards, watch.Elapsed, watch.Elapsed) : null;
    }

    /// <summary>The boards of the cheapest assignment.</summary>
    public static List<SawnBoard>? Boards(PlanningProblem problem, bool strengthened)
    {
        var sources = Source.Of(problem);
        var policies = Policy.All.Where(policy => strengthened || policy.Buying != Buying.CheapestFilled).ToList();
        var assignments = JobList.Of(problem)
            .SelectMany(jobs => Orders(problem.Shop, sources, jobs)
                .SelectMany(order => policies.Select(policy => new Packing(problem.Shop, sources, policy).Run(order))))
            .OfType<List<SawnBoard>>().ToList();
        return (strengthened ? assignments.Select(boards => Smaller.Sizes(problem.Shop, sources, boards)) : assignments).MinBy(boards => boards.Sum(board => board.Source.Price));
    }

    /// <summary>The largest first, by each measure; and again with those first that the fewest sources can serve.</summary>
    private static IEnumerable<List<Job>> Orders(Shop shop, IReadOnlyList<Source> sources, List<Job> jobs)
    {
        var choice = jobs.ToDictionary(job => job, job => sources.Count(source => Milling.Widest(shop, source, job) is not null
            && source.Clear.Length >= Length.Min(job.Finished.Length, job is PartJob { MayTurn: true } ? job.Finished.Width : job.Finished.Length)));
        foreach (var size in Sizes)
        {
            yield return [.. jobs.OrderByDescending(size).ThenByDescending(job => job.Finished.Length)];
            yield return [.. jobs.OrderBy(job => choice[job]).ThenByDescending(size).ThenByDescending(job => job.Finished.Length)];
        }
    }
}
