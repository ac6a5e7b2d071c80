using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>One assignment of jobs in a given order: each goes where it fits best, else to a new board in stock, else to a new one that is bought.</summary>
internal sealed class Packing(Shop shop, IReadOnlyList<Source> sources, Policy policy)
{
    private readonly List<SawnBoard> boards = [];
    private readonly Dictionary<string, long> taken = new(StringComparer.Ordinal);
    private readonly Dictionary<(string, int, int), int> strips = [];

    /// <summary>The boards cut; null if a job found no place.</summary>
    public List<SawnBoard>? Run(IReadOnlyList<Job> jobs)
    {
        for (var at = 0; at < jobs.Count; at++)
        {
            var needed = jobs[at] is StripJob strip ? strip.Finished.Width : Length.FromTicks(1);
            while (needed > Length.Zero)
            {
                if (Best(boards, jobs[at], needed) is not { } found)
                {
                    if (Open(jobs, at, needed) is not { } opened)
                    {
                        return null;
                    }

                    boards.Add(opened);
                    taken[opened.Source.Supply] = taken.GetValueOrDefault(opened.Source.Supply) + 1;
                    found = Best([opened], jobs[at], needed)!.Value;
                }

                needed -= Make(found.Board, found.Place, jobs[at]);
            }
        }

        return boards;
    }

    private (SawnBoard Board, Place Place)? Best(IEnumerable<SawnBoard> among, Job job, Length needed)
    {
        (SawnBoard, Place)? best = null;
        var least = (double.MaxValue, double.MaxValue);
        foreach (var board in among)
        {
            foreach (var place in board.Free.SelectMany(wood => Place.Of(shop, board.Source, wood, job, needed)))
            {
                var waste = place.Waste(policy.Fit);
                if (waste.CompareTo(least) < 0)
                {
                    (best, least) = ((board, place), waste);
                }
            }
        }

        return best;
    }

    /// <summary>Cuts it and tells how much of the job is done by that.</summary>
    private Length Make(SawnBoard board, Place place, Job job)
    {
        board.Jobs.Add(job);
        if (job is StripJob strip)
        {
            var key = (job.Name, job.Copy, strip.SubPanel);
            var order = strips[key] = strips.GetValueOrDefault(key) + 1;
            board.Cut(place.Wood, place.Along, place.Across, at => new StripPiece(at, job.Name, job.Copy, strip.SubPanel, order, place.Net));
            return place.Net;
        }

        board.Cut(place.Wood, place.Along, place.Across, at => new PartPiece(at, job.Name, job.Copy, place.Turned));
        return Length.FromTicks(1);
    }

    private SawnBoard? Open(IReadOnlyList<Job> jobs, int at, Length needed)
    {
        var able = sources.Where(source => taken.GetValueOrDefault(source.Supply) < source.Most)
            .Select(source => (Source: source, Places: Place.Of(shop, source, new FreeWood(source.Clear, 0), jobs[at], needed).ToList()))
            .Where(entry => entry.Places.Count > 0).ToList();
        var stock = able.Where(entry => entry.Source.Board is not null).OrderBy(entry => entry.Places.Min(place => place.Waste(policy.Fit))).Select(entry => entry.Source).FirstOrDefault();
        if (stock is not null)
        {
            return new SawnBoard(shop, stock, policy.First);
        }

        var onOffer = able.Where(entry => entry.Source.Offer is not null).Select(entry => entry.Source);
        return policy.Buying switch
        {
            Buying.CheapestForPart => onOffer.OrderBy(source => source.Price).ThenByDescending(source => source.Size.Face).Select(Fresh).FirstOrDefault(),
            Buying.CheapestArea => onOffer.OrderBy(source => source.Price / (double)source.Size.Face.SquareTicks).Select(Fresh).FirstOrDefault(),
            Buying.CheapestFilled => onOffer.SelectMany(source => Enum.GetValues<FirstCut>().Select(first => new SawnBoard(shop, source, first)))
                .OrderBy(board => board.Source.Price / Filled(board.Source, board.First, jobs, at, needed)).FirstOrDefault(),
        };

        SawnBoard Fresh(Source source) => new(shop, source, policy.First);
    }

    /// <summary>How much area the jobs from one on fill of a fresh board.</summary>
    private double Filled(Source source, FirstCut first, IReadOnlyList<Job> jobs, int at, Length needed)
    {
        var trial = new Packing(shop, [], policy);
        var board = new SawnBoard(shop, source, first);
        foreach (var job in jobs.Skip(at))
        {
            var lacking = job is StripJob strip ? (job == jobs[at] ? needed : strip.Finished.Width) : Length.FromTicks(1);
            while (lacking > Length.Zero && trial.Best([board], job, lacking) is { } found)
            {
                lacking -= trial.Make(board, found.Place, job);
            }
        }

        return board.Used;
    }
}
