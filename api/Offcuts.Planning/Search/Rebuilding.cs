using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Plans anew for what a few boards of a plan gave, the rest staying as it is: column generation for that remainder, then the
/// integer program over its patterns.
/// </summary>
internal sealed class Rebuilding(PlanningModel model, PatternPricer pricer, IReadOnlyCollection<Pattern> pool, SearchClock clock, Action<Pattern> found)
{
    private const int MostRounds = 8;
    private const int Enrichments = 3;

    /// <summary>Whether the last integer program was too large to be solved: fewer boards should be freed.</summary>
    public bool WasTooLarge { get; private set; }

    /// <summary>A better plan that keeps these cuts of the incumbent; null if none was found.</summary>
    public Solution? Run(IReadOnlyList<(Pattern Pattern, int Count)> kept, Solution incumbent, PoolGoal goal, Random random)
    {
        var rest = Remainder.After(model, kept);
        var spent = kept.Sum(cut => CostWeights.Blend(model).Of(cut.Pattern) * cut.Count);
        using var master = new MasterProblem(model, CostWeights.Blend(model));
        master.SetRemainder(rest);
        foreach (var pattern in pool.Where(rest.IsProper))
        {
            master.Add(pattern);
        }

        ColumnGeneration.Run(model, master, pricer, CostWeights.Blend(model), rest.Need, clock, MostRounds, rest.Has, found, thorough: false);
        var above = CostWeights.Blend(model).Of(incumbent) - spent - master.Objective;
        if (clock.IsOver || above <= 1e-6)
        {
            return null;
        }

        // A pattern that loses more than the incumbent costs above the linear program is in no better plan.
        var enrichment = new Enrichment(model, pricer, clock);
        var patterns = master.Patterns
            .Concat(enrichment.Run(master.CoverDuals, master.BoardDuals, rest, Enrichments, random))
            .DistinctBy(pattern => pattern.Key, StringComparer.Ordinal)
            .Where(pattern => CostWeights.Blend(model).Reduced(model, pattern, master.CoverDuals, master.BoardDuals) <= above + 1e-6).ToList();
        return PoolProgram.Solve(
            model, patterns, rest, kept, incumbent.Money, goal, incumbent, clock, TimeSpan.FromSeconds(0.4), tooLarge: () => WasTooLarge = true);
    }
}
