using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Looks for cheaper pieces to buy for what is on the bought boards.</summary>
internal static class Smaller
{
    /// <summary>The same assignment with each bought board in the cheapest size that holds its parts. Boards with strips stay as they are.</summary>
    public static List<SawnBoard> Sizes(Shop shop, IReadOnlyList<Source> sources, List<SawnBoard> boards)
    {
        var taken = boards.GroupBy(board => board.Source.Supply).ToDictionary(group => group.Key, group => (long)group.Count(), StringComparer.Ordinal);
        return [.. boards.Select(Replace)];

        SawnBoard Replace(SawnBoard board)
        {
            if (board.Source.Offer is null || board.Jobs.Exists(job => job is StripJob))
            {
                return board;
            }

            foreach (var source in sources.Where(source => source.Price < board.Source.Price).OrderBy(source => source.Price))
            {
                var same = source.Supply == board.Source.Supply;
                if ((same || taken.GetValueOrDefault(source.Supply) < source.Most) && Hold(shop, source, board.Jobs) is { } smaller)
                {
                    taken[board.Source.Supply]--;
                    taken[source.Supply] = taken.GetValueOrDefault(source.Supply) + 1;
                    return smaller;
                }
            }

            return board;
        }
    }

    private static SawnBoard? Hold(Shop shop, Source source, List<Job> jobs)
    {
        var orders = new[] { jobs, [.. jobs.OrderByDescending(job => job.Finished.Width)], [.. jobs.OrderByDescending(job => job.Finished.Length)] };
        return (from order in orders
                from policy in Policy.All.Where(policy => policy.Buying == Buying.CheapestForPart)
                let boards = new Packing(shop, [source with { Most = 1 }], policy).Run(order)
                where boards is not null
                select boards[0]).FirstOrDefault();
    }
}
