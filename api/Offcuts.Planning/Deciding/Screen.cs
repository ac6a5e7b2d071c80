using Offcuts.Domain;
using Offcuts.Planning.Bounds;
using Offcuts.Planning.Layout;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Ordering;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Deciding;

/// <summary>What a quick look at a problem tells.</summary>
/// <param name="Bound">No plan for all parts has a smaller outlay, in minor units; the greatest number where none can have all parts.</param>
/// <param name="Cost">The outlay of a plan for all parts; null if the look found none.</param>
/// <param name="Plan">A plan that a search may not find, to start one from; null where that is not needed.</param>
internal readonly record struct Screened(long Bound, long? Cost, EarlierPlan? Plan = null);

/// <summary>
/// A quick look at a problem: greedy plans and linear programs, no search. It says for sure that nothing stays within a limit, or that something does, or
/// leaves it open.
/// </summary>
internal static class Screen
{
    /// <summary>No plan has everything.</summary>
    public const long Impossible = long.MaxValue;

    /// <summary>The part of the time left in which a component is settled.</summary>
    private const int SettleShare = 8;
    private static readonly TimeSpan MostToSettle = TimeSpan.FromSeconds(2);

    /// <summary>Looks at a problem.</summary>
    /// <param name="problem">What to build from what.</param>
    /// <param name="limit">Outlay in minor units, beyond which it does not matter how much it is.</param>
    /// <param name="seed">Seed of the greedy plans.</param>
    /// <param name="memory">Prices of other problems; takes those of this one.</param>
    /// <param name="clock">When to stop.</param>
    public static Screened Look(PlanningProblem problem, long limit, int seed, PriceMemory memory, SearchClock clock)
    {
        var terms = new OrderTerms(problem);
        // Without wood to buy the outlay is what the items' suppliers charge, and no plan has a smaller one.
        var charges = terms.Fixed(terms.Least);
        if (charges > limit)
        {
            return new(charges, null);
        }

        if (limit <= 0)
        {
            // Nothing may be bought: what is not on offer makes no difference, and stock alone can be settled.
            List<Offer> free = [.. problem.Offers.Where(offer => OfferSize.Of(offer).Any(size => StepPrices.LeastPrice(size) == Money.Zero))];
            var seen = OfWood(problem with { Offers = [.. free.Where(offer => !terms.Matters(offer))], Terms = [] }, limit, seed, memory, clock);
            // What is given away by someone who charges for an order, or is a further stop, may still come to nothing with what else is ordered there.
            return seen.Cost is null && free.Exists(terms.Matters) ? seen with { Bound = 0 } : seen;
        }

        if (!terms.Any)
        {
            return OfWood(problem, limit, seed, memory, clock);
        }

        if (OfWood(problem with { Offers = [], Terms = [] }, 0, seed, memory, clock) is { Cost: 0 } alone)
        {
            return alone with { Bound = 0, Cost = charges };
        }

        // Of wood at its least prices only the bound says anything of an outlay: charges come on top.
        return OfWood(problem with { Offers = terms.Widest.Offers(terms, Money.Zero) }, limit, seed, memory, clock) with { Cost = null };
    }

    private static Screened OfWood(PlanningProblem problem, long limit, int seed, PriceMemory memory, SearchClock clock)
    {
        problem = problem with { Stock = CountedStock.Of(problem) };
        var choices = new SpeciesChoices(problem);
        var builder = new ModelBuilder(problem);
        var components = new Dictionary<string, ScreenedComponent>(StringComparer.Ordinal);
        long? cost = null;
        var bound = Impossible;
        // A choice without which something is missing gives no plan with everything.
        foreach (var scenario in choices.List().Where(scenario => scenario.Missing.Count == 0))
        {
            var (least, found) = Of(scenario.Wanted);
            bound = Math.Min(bound, least);
            cost = found?.Sum(component => component.Solution!.Money) is { } money && money < (cost ?? Impossible) ? money : cost;
            if (cost <= limit || clock.IsOver)
            {
                return new(cost <= limit ? Math.Min(bound, cost!.Value) : 0, cost, cost <= limit && found!.Exists(component => component.IsSettled) ? Written(found) : null);
            }
        }

        return new(choices.IsTruncated ? 0 : bound, cost);

        (long Bound, List<ScreenedComponent>? Found) Of(Wanted wanted)
        {
            List<(Wanted Part, PlanningModel Model)> parts = [.. Components.Split(wanted, builder.Build(wanted)).Select(part => (part, builder.Build(part)))];
            var known = parts.Sum(part => (long)Math.Ceiling(memory.Bound(part.Part, part.Model, limit)));
            if (known > limit)
            {
                return (known, null);
            }

            List<ScreenedComponent> searched = [.. parts.Select(part => Searched(part.Part, part.Model))];
            var least = searched.Sum(component => component.Search.RoundedBound);
            // Only what the linear programs leave open is worth more time.
            for (var at = 0; at < searched.Count && least <= limit && !searched.Exists(component => component.IsImpossible); at++)
            {
                components[parts[at].Part.Key] = searched[at] = Settled(searched[at]);
            }

            return (
                searched.Exists(component => component.IsImpossible) ? Impossible : least,
                searched.TrueForAll(component => component.Solution is not null) ? searched : null);
        }

        ScreenedComponent Searched(Wanted part, PlanningModel model)
        {
            var key = part.Key;
            if (!components.TryGetValue(key, out var component))
            {
                var search = new ComponentSearch(model, null, null, clock, seed, () => { });
                search.Start();
                foreach (var other in components.Values)
                {
                    search.Borrow(other.Search);
                }

                search.Relax();
                memory.Keep(part, model, search.BoundDuals);
                components.Add(key, component = new ScreenedComponent(search, search.Best is { IsComplete: true } best ? best : null));
            }

            return component;
        }

        ScreenedComponent Settled(ScreenedComponent component)
        {
            if (component.IsSettled || component.Solution is not null || clock.IsOver || component.Search.Model.Boards.Any(board => board.Price > 0))
            {
                return component;
            }

            var time = clock.Left / SettleShare;
            var settled = StockListing.Settle(component.Search.Model, clock, time < MostToSettle ? time : MostToSettle, component.Search.Patterns);
            return component with { Solution = settled.Found, IsImpossible = settled.IsImpossible, IsSettled = true };
        }

        EarlierPlan Written(List<ScreenedComponent> found) => new(problem, PlanWriter.Write(
            problem, [.. found.Select(component => (component.Search.Model, component.Solution!))], [], 0,
            new PlanRun(seed, clock.Elapsed, clock.Elapsed, clock.Elapsed, false, Planner.Version)));
    }

    /// <summary>What is known of one component.</summary>
    /// <param name="Search">Its first plan and its linear programs.</param>
    /// <param name="Solution">Cuts that make everything; null if none are known.</param>
    /// <param name="IsImpossible">Whether nothing can.</param>
    /// <param name="IsSettled">Whether listing its patterns was tried.</param>
    private sealed record ScreenedComponent(ComponentSearch Search, Solution? Solution, bool IsImpossible = false, bool IsSettled = false);
}
