using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Diving with re-pricing: fix the patterns that the linear program takes whole, else the largest fraction; take what they cover
/// off the demand; price patterns that are proper for what is left; repeat until all is covered.
/// </summary>
/// <param name="model">The model.</param>
/// <param name="pricer">Finds patterns.</param>
/// <param name="pool">Patterns to begin with.</param>
/// <param name="clock">Ends it.</param>
/// <param name="found">Told of every new pattern.</param>
/// <param name="roundsPerStep">Rounds of pricing before the next cuts are fixed.</param>
internal sealed class Dive(
    PlanningModel model, PatternPricer pricer, IReadOnlyCollection<Pattern> pool, SearchClock clock, Action<Pattern> found, int roundsPerStep = 6)
{
    private const double Whole = 1e-5;

    /// <summary>What the linear program may rise by, of its cost, before a dive counts as having gone astray.</summary>
    private const double Astray = 0.002;

    /// <summary>
    /// The cuts of the last dive that cost next to nothing: those fixed before the linear program began to rise. What comes after
    /// them are the last few boards, for which one choice at a time is a poor guide.
    /// </summary>
    public IReadOnlyList<(Pattern Pattern, int Count)> Sound { get; private set; } = [];

    /// <summary>All cuts of the last dive, in the order in which they were fixed.</summary>
    public IReadOnlyList<(Pattern Pattern, int Count)> Cuts => cuts;

    private readonly List<(Pattern Pattern, int Count)> cuts = [];

    /// <summary>
    /// One dive; null if time ran out or it cannot beat the incumbent. <paramref name="discrepancies"/> says how often the
    /// second choice is taken instead of the first, as <paramref name="random"/> decides where. It goes on from what is <paramref name="begun"/>.
    /// </summary>
    public Solution? Run(Solution? incumbent, int discrepancies, Random random, IReadOnlyList<(Pattern Pattern, int Count)>? begun = null)
    {
        using var master = new MasterProblem(model, CostWeights.Blend(model));
        var rest = new Remainder(model);
        cuts.Clear();
        var spent = 0.0;
        var limit = double.PositiveInfinity;
        Sound = [];
        foreach (var pattern in pool)
        {
            master.Add(pattern);
        }

        if (begun is { Count: > 0 })
        {
            Fix(begun);
        }

        while (!rest.IsCovered)
        {
            ColumnGeneration.Run(model, master, pricer, CostWeights.Blend(model), rest.Need, clock, roundsPerStep, rest.Has, found, thorough: false);
            limit = double.IsPositiveInfinity(limit) ? master.Objective * (1 + Astray) : limit;
            if (spent + master.Objective <= limit)
            {
                Sound = [.. cuts];
            }

            if (clock.IsOver || (incumbent is { IsComplete: true } && spent + master.Objective >= CostWeights.Blend(model).Of(incumbent) - 1e-6))
            {
                return null;
            }

            var chosen = Choose(master, rest, ref discrepancies, random);
            if (chosen.Count == 0)
            {
                break;
            }

            Fix(chosen);
        }

        return new Solution(model, cuts);

        void Fix(IEnumerable<(Pattern Pattern, int Count)> taken)
        {
            foreach (var (pattern, count) in taken)
            {
                rest.Take(pattern, count);
                cuts.Add((pattern, count));
                spent += CostWeights.Blend(model).Of(pattern) * count;
            }

            master.SetRemainder(rest);
        }
    }

    private static List<(Pattern Pattern, int Count)> Choose(MasterProblem master, Remainder rest, ref int discrepancies, Random random)
    {
        var ranked = Enumerable.Range(0, master.Patterns.Count)
            .Where(p => master.Values[p] > Whole)
            .OrderByDescending(p => master.Values[p]).ThenBy(p => p)
            .Select(p => (Pattern: master.Patterns[p], Value: master.Values[p])).ToList();
        var open = rest.Copy();
        var chosen = new List<(Pattern, int)>();
        foreach (var (pattern, value) in ranked.Where(entry => entry.Value >= 1 - Whole))
        {
            Take(pattern, (int)Math.Floor(value + Whole));
        }

        if (chosen.Count > 0)
        {
            return chosen;
        }

        if (discrepancies > 0 && ranked.Count > 1 && random.Next(3) == 0)
        {
            discrepancies--;
            ranked.RemoveAt(0);
        }

        // Several large fractions at once, as long as they do not get into each other's way: fewer, longer steps.
        var most = 1 + (ranked.Count / 12);
        foreach (var (pattern, value) in ranked)
        {
            if (chosen.Count >= most || (chosen.Count > 0 && value < 0.6))
            {
                break;
            }

            Take(pattern, 1);
        }

        if (chosen.Count == 0 && ranked.FirstOrDefault(entry => rest.Serves(entry.Pattern)).Pattern is { } useful)
        {
            chosen.Add((useful, 1));
        }

        return chosen;

        void Take(Pattern pattern, int wanted)
        {
            var count = 0;
            for (; count < wanted && open.IsProper(pattern); count++)
            {
                open.Take(pattern, 1);
            }

            if (count > 0)
            {
                chosen.Add((pattern, count));
            }
        }
    }
}
