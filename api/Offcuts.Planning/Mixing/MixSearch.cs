using Offcuts.Domain;
using Offcuts.Planning.Deciding;
using Offcuts.Planning.Mixing;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning;

/// <summary>
/// Finds the mix of several designs that puts most of the stock into builds. A linear program with free demand rules out most mixes at once; whole
/// numbers over its patterns give one to begin with. Then the best mix that is not ruled out is looked at, again and again, until it can be made: it is the answer.
/// Only what can be planned counts as made, and only what a bound rules out as impossible; what stays open is told.
/// </summary>
/// <param name="question">The question.</param>
/// <param name="limits">Time for all of it.</param>
/// <param name="solve">The planner.</param>
/// <param name="progress">Told of every mix that was looked at.</param>
/// <param name="cancellationToken">Ends it early, with what is known.</param>
public sealed class MixSearch(MixQuestion question, PlanLimits limits, Solving solve, Action<MixProgress>? progress, CancellationToken cancellationToken)
{
    /// <summary>The part of the time in which the mix is sought; the rest is for its plan.</summary>
    private const double SearchShare = 0.75;

    /// <summary>Of what is left of it, the part for each design alone, for the linear programs, and for a plan of one mix.</summary>
    private const double AloneShare = 0.4;
    private const double RelaxShare = 0.5;
    private const double TrialShare = 0.25;
    private const int MostOpenShares = 8;
    private static readonly TimeSpan LeastTrial = TimeSpan.FromMilliseconds(50);

    private MixBuilds builds = new(question);
    private readonly SearchClock clock = new(limits.Budget, cancellationToken);
    private readonly SearchClock searching = new(limits.Budget * SearchShare, cancellationToken);
    private readonly PriceMemory memory = new();
    private readonly List<int[]> open = [];

    // The plan that the last look found, with its mix.
    private (int[] Counts, EarlierPlan? Plan) seen = ([], null);
    private PlannedMix? best;
    private int tried;

    private MixRank Floor => best?.Rank ?? default;

    /// <summary>Searches until the answer is proved and planned, or until time is up.</summary>
    public MixAnswer Run()
    {
        if (builds.Least.Zip(builds.Most).Any(pair => pair.First > pair.Second))
        {
            return new MixAnswer(null, default(MixRank), true, 0);
        }

        Alone();
        if (builds.Least.Zip(builds.Most).Any(pair => pair.First > pair.Second))
        {
            return new MixAnswer(null, default(MixRank), true, tried);
        }

        var (choices, programs, isTruncated) = Relax();
        Begin(programs);
        var region = new MixRegion(builds, choices);
        var isExhausted = Seek(region);
        TryOpen();
        Polish();
        open.RemoveAll(counts => builds.RankOf(counts) <= Floor);
        var above = isExhausted ? null : region.Best(Floor, out isExhausted);
        // Of mixes that were not gone through nothing is known.
        var atMost = isTruncated || !isExhausted ? (MixRank?)null : open.Append(above).OfType<int[]>().Select(builds.RankOf).Append(Floor).Max();
        return new MixAnswer(best, atMost, !isTruncated && open.Count == 0 && above is null && isExhausted, tried);
    }

    /// <summary>
    /// Most copies of each design where nothing else is made, by halving: what is out takes more copies with it. The linear program would make seven tenths of a bench.
    /// </summary>
    private void Alone()
    {
        var until = searching.Left * (1 - AloneShare);
        var ranges = question.Ranges.ToArray();
        for (var at = 0; at < ranges.Length; at++)
        {
            var (from, to) = (0, builds.Most[at]);
            while (from < to && searching.Left > until)
            {
                var middle = from + ((to - from + 1) / 2);
                var counts = new int[ranges.Length];
                counts[at] = middle;
                (from, to) = Look(counts) == StretchVerdict.Out ? (from, middle - 1) : (middle, to);
            }

            ranges[at] = ranges[at] with { Most = to };
        }

        builds = new MixBuilds(question with { Ranges = ranges });
    }

    /// <summary>What no mix exceeds, by choice of species.</summary>
    private (List<MixChoice> Choices, List<MixProgram> Programs, bool IsTruncated) Relax()
    {
        var problem = builds.At(builds.Most);
        problem = problem with { Stock = CountedStock.Of(problem) };
        var species = new SpeciesChoices(problem);
        var builder = new ModelBuilder(problem);
        var choices = new List<(MixChoice Choice, MixProgram Program)>();
        var relaxing = new SearchClock(searching.Left * RelaxShare, cancellationToken);
        foreach (var scenario in species.List())
        {
            var lacking = scenario.Missing.Select(missing => builds.OfName(missing.Name)).ToHashSet();
            int[] most = [.. builds.Most.Select((count, build) => lacking.Contains(build) ? 0 : count)];
            var wanted = new Wanted(
                [.. scenario.Wanted.Parts.Where(want => !lacking.Contains(builds.OfName(want.Part.Name)))],
                [.. scenario.Wanted.Panels.Where(want => !lacking.Contains(builds.OfName(want.Panel.Name)))]);
            var program = new MixProgram(builds, builder.Build(wanted), most);
            choices.Add((new MixChoice(most, program.Relax(relaxing)), program));
        }

        // The most promising first.
        choices = [.. choices.OrderByDescending(each => Bound(each.Choice))];
        return ([.. choices.Select(each => each.Choice)], [.. choices.Select(each => each.Program)], species.IsTruncated);

        MixRank Bound(MixChoice choice) => new MixRegion(builds, [choice]).Best(default, out _) is { } counts ? builds.RankOf(counts) : default;
    }

    /// <summary>A mix to begin with.</summary>
    private void Begin(List<MixProgram> programs)
    {
        foreach (var program in programs)
        {
            if (!searching.IsOver && program.Whole(searching.Left * TrialShare) is { } counts && builds.RankOf(counts) > Floor)
            {
                Try(counts, searching.Left * TrialShare);
            }
        }

        if (best is null)
        {
            Climb();
        }
    }

    /// <summary>From the fewest copies upwards, one design after another: as many as a look finds wood for.</summary>
    private void Climb()
    {
        int[] counts = [.. builds.Least];
        foreach (var at in Enumerable.Range(0, builds.Count).OrderByDescending(at => builds.Ranks[at].Wood))
        {
            for (var (from, to) = (builds.Least[at], builds.Most[at]); from < to && !searching.IsOver;)
            {
                var middle = from + ((to - from + 1) / 2);
                counts[at] = middle;
                (from, to) = Look(counts) == StretchVerdict.Within ? (middle, to) : (from, middle - 1);
                counts[at] = from;
            }
        }

        if (builds.RankOf(counts).CompareTo(default) > 0)
        {
            Try(counts, searching.Left * TrialShare);
        }
    }

    /// <summary>Looks at the best mix that is left until one can be made; says whether none that is better is left.</summary>
    private bool Seek(MixRegion region)
    {
        while (!searching.IsOver)
        {
            if (region.Best(Floor, out var isWhole) is not { } counts)
            {
                return isWhole;
            }

            var verdict = Look(counts);
            if (searching.IsOver && verdict != StretchVerdict.Out)
            {
                return false;
            }

            if (verdict != StretchVerdict.Within || Try(counts, searching.Left * TrialShare) != StretchVerdict.Within)
            {
                region.Exclude(counts);
                if (verdict != StretchVerdict.Out)
                {
                    open.Add(counts);
                }
            }
        }

        return false;
    }

    /// <summary>Searches for plans of better mixes that are still open, the best first, each for its share of the time.</summary>
    private void TryOpen()
    {
        foreach (var (index, counts) in open.OrderByDescending(builds.RankOf).ToList().Index())
        {
            if (searching.IsOver || builds.RankOf(counts) <= Floor)
            {
                return;
            }

            var verdict = Try(counts, searching.Left / Math.Min(open.Count - index, MostOpenShares));
            if (verdict != StretchVerdict.Open)
            {
                open.Remove(counts);
            }
        }
    }

    private StretchVerdict Look(int[] counts)
    {
        if (builds.RankOf(counts).CompareTo(default) <= 0)
        {
            return StretchVerdict.Within;
        }

        var screened = Screen.Look(builds.At(counts), 0, limits.Seed, memory, searching);
        seen = ([.. counts], screened.Plan);
        tried++;
        progress?.Invoke(new MixProgress(tried, best?.Counts));
        return screened.Cost == 0 ? StretchVerdict.Within : screened.Bound > 0 ? StretchVerdict.Out : StretchVerdict.Open;
    }

    /// <summary>Plans a mix; a plan that has everything makes it the best if it is better.</summary>
    private StretchVerdict Try(int[] counts, TimeSpan time)
    {
        var problem = builds.At(counts);
        problem = problem with { Earlier = seen.Counts.SequenceEqual(counts) ? seen.Plan : null };
        var trial = Trial.Run(problem, Money.Zero, isEnoughWithin: true, limits with { Budget = time > LeastTrial ? time : LeastTrial }, solve, cancellationToken);
        if (trial.IsWithin && builds.RankOf(counts) > Floor)
        {
            best = new PlannedMix([.. counts], builds.RankOf(counts), problem with { Earlier = null }, trial.Plan);
            progress?.Invoke(new MixProgress(tried, best.Counts));
        }

        return trial.IsWithin ? StretchVerdict.Within : trial.IsOut ? StretchVerdict.Out : StretchVerdict.Open;
    }

    /// <summary>The plan of the answer with less waste, if there is one.</summary>
    private void Polish()
    {
        var time = limits.Budget * (1 - SearchShare);
        if (best is not { } found || clock.Left < LeastTrial)
        {
            return;
        }

        // From the plan at hand: a search from nothing may not find one again.
        var plan = solve(found.Problem with { Earlier = new EarlierPlan(found.Problem, found.Plan) }, limits with { Budget = clock.Left < time ? clock.Left : time }, null, cancellationToken);
        if (plan.Missing.Count == 0 && Net(plan) < Net(found.Plan))
        {
            best = found with { Plan = plan };
        }

        static long Net(Plan plan) => plan.WorthConsumed.MinorUnits - plan.WorthReturned.MinorUnits;
    }
}
