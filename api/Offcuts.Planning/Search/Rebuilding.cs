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
        if (clock.IsOver || spent + master.Objective >= CostWeights.Blend(model).Of(incumbent) - 1e-6)
        {
            return null;
        }

        var enrichment = new Enrichment(model, pricer, clock);
        var patterns = master.Patterns
            .Concat(enrichment.Run(master.CoverDuals, master.BoardDuals, rest, Enrichments, random))
            .DistinctBy(pattern => pattern.Key, StringComparer.Ordinal)
            .Where(pattern => Lacks(master, pattern) <= CostWeights.Blend(model).Of(incumbent) - spent - master.Objective + 1e-6).ToList();
        return PoolProgram.Solve(
            model, patterns, rest, kept, incumbent.Money, goal, incumbent, clock, TimeSpan.FromSeconds(0.4), tooLarge: () => WasTooLarge = true);
    }

    /// <summary>What a pattern costs more than it gives at the linear program's prices: one that lacks more than the incumbent costs above the program is in no better plan.</summary>
    private double Lacks(MasterProblem master, Pattern pattern) => CostWeights.Blend(model).Of(pattern) - master.BoardDuals[pattern.Board.Index]
        - pattern.Cover.Sum(cover => master.CoverDuals[cover.Row] * (model.Rows[cover.Row] is StripRow row ? (double)cover.Amount / row.Needed : cover.Amount));
}
