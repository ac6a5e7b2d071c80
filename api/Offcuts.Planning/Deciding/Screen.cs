using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Ordering;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Deciding;

/// <summary>What a quick look at a problem tells.</summary>
/// <param name="Bound">No plan for all parts spends less on wood, in minor units; the greatest number where none can have all parts.</param>
/// <param name="Cost">What the wood of a plan for all parts costs; null if the look found none.</param>
internal readonly record struct Screened(long Bound, long? Cost);

/// <summary>
/// A quick look at a problem: greedy plans and linear programs, no search. It says for sure that nothing stays within a limit, or that something does, or
/// leaves it open.
/// </summary>
internal static class Screen
{
    /// <summary>No plan has everything.</summary>
    public const long Impossible = long.MaxValue;

    /// <summary>Looks at a problem.</summary>
    /// <param name="problem">What to build from what.</param>
    /// <param name="limit">Money for wood in minor units, beyond which it does not matter how much it is.</param>
    /// <param name="seed">Seed of the greedy plans.</param>
    /// <param name="memory">Prices of other problems; takes those of this one.</param>
    /// <param name="clock">When to stop.</param>
    public static Screened Look(PlanningProblem problem, long limit, int seed, PriceMemory memory, SearchClock clock)
    {
        // Of wood at its least prices only the bound says anything of an outlay: charges come on top.
        var terms = new OrderTerms(problem);
        return terms.Any ? OfWood(problem with { Offers = terms.Widest.Offers(terms, Money.Zero) }, limit, seed, memory, clock) with { Cost = null }
            : OfWood(problem, limit, seed, memory, clock);
    }

    private static Screened OfWood(PlanningProblem problem, long limit, int seed, PriceMemory memory, SearchClock clock)
    {
        problem = problem with { Stock = CountedStock.Of(problem) };
        var choices = new SpeciesChoices(problem);
        var builder = new ModelBuilder(problem);
        var components = new Dictionary<string, ComponentSearch>(StringComparer.Ordinal);
        long? cost = null;
        var bound = Impossible;
        // A choice without which something is missing gives no plan with everything.
        foreach (var scenario in choices.List().Where(scenario => scenario.Missing.Count == 0))
        {
            var (least, money) = Of(scenario.Wanted);
            bound = Math.Min(bound, least);
            cost = money is { } found && found < (cost ?? Impossible) ? found : cost;
            if (cost <= limit || clock.IsOver)
            {
                return new(cost <= limit ? Math.Min(bound, cost!.Value) : 0, cost);
            }
        }

        return new(choices.IsTruncated ? 0 : bound, cost);

        (long Bound, long? Money) Of(Wanted wanted)
        {
            List<(Wanted Part, PlanningModel Model)> parts = [.. Components.Split(wanted, builder.Build(wanted)).Select(part => (part, builder.Build(part)))];
            var known = parts.Sum(part => (long)Math.Ceiling(memory.Bound(part.Part, part.Model, limit)));
            if (known > limit)
            {
                return (known, null);
            }

            List<ComponentSearch> searches = [.. parts.Select(part => Searched(part.Part, part.Model))];
            return (
                searches.Sum(search => search.RoundedBound),
                searches.TrueForAll(search => search.Best is { IsComplete: true }) ? searches.Sum(search => search.Best!.Money) : null);
        }

        ComponentSearch Searched(Wanted part, PlanningModel model)
        {
            var key = part.Key;
            if (!components.TryGetValue(key, out var search))
            {
                search = new ComponentSearch(model, clock, seed, () => { });
                search.Start();
                foreach (var other in components.Values)
                {
                    search.Borrow(other);
                }

                search.Relax();
                memory.Keep(part, model, search.BoundDuals);
                components.Add(key, search);
            }

            return search;
        }
    }
}
