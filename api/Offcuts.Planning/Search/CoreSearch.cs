using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>A component's paid core as the component's search goes on: opened where it is worth it, and each better plan of it made whole.</summary>
/// <param name="model">The component.</param>
/// <param name="wanted">What it is to make; null if its core is not to be searched apart.</param>
/// <param name="cores">The searches for the cores of all components; null likewise.</param>
/// <param name="pricer">Finds the patterns of the component.</param>
/// <param name="hand">Takes the plans.</param>
/// <param name="clock">Limits the time.</param>
/// <param name="random">The component's dice.</param>
internal sealed class CoreSearch(PlanningModel model, Wanted? wanted, PaidCores? cores, PatternPricer pricer, PlansAtHand hand, SearchClock clock, Random random)
{
    private PaidCore? core;

    // The core's best plan in the component's patterns, and what it spends.
    private long? money;

    /// <summary>The core's best plan as cuts of the component's boards; null where there is none.</summary>
    public IReadOnlyList<(Pattern Pattern, int Count)>? Cuts { get; private set; }

    /// <summary>Whether there is one.</summary>
    public bool IsOpen => core is not null;

    /// <summary>Whether there is one whose least money is not known yet.</summary>
    public bool IsUnsettled => core is { IsProved: false };

    /// <summary>No plan for the component costs less, in minor units.</summary>
    public long Bound => core?.Bound ?? 0;

    /// <summary>Whether the component's best plan spends no more than the core does: whoever spends less, spends less on that.</summary>
    public bool IsAllThatIsSpent => money is not null && hand.Best?.Money == money;

    /// <summary>Opens the core around some parts and panels, instead of one that there is, unless that has all of them.</summary>
    /// <param name="priced">The names of what costs money.</param>
    /// <returns>Whether it was asked for anew.</returns>
    public bool Open(IReadOnlySet<string> priced)
    {
        if (wanted is null || cores is null || core?.Has(priced) == true || hand.Best is not { IsComplete: true } || clock.IsNearlyOver)
        {
            return false;
        }

        (core, Cuts, money) = (PaidCore.Of(model, wanted, priced, pricer, cores), null, null);
        core?.Begin();
        return true;
    }

    /// <summary>Raises its bound; see <see cref="PaidCore.Raise"/>.</summary>
    public void Raise(long known, TimeSpan share) => core?.Raise(known, share);

    /// <summary>One round more; see <see cref="ComponentSearch.Deepen"/>.</summary>
    public void Deepen(int round) => core?.Deepen(round);

    /// <summary>Makes its best plan whole, if that is a better one than before: the rest from what is owned, as far as that goes.</summary>
    public void MakeWhole()
    {
        if (core?.Money is not { } least || money <= least || core.Cuts() is not { } made)
        {
            return;
        }

        // Where an earlier plan cuts a board like this, that counts.
        List<(Pattern Pattern, int Count)> cuts = [.. made.Select(cut => (hand.Known(cut.Pattern), cut.Count))];
        (Cuts, money) = (cuts, least);
        hand.Offer(GreedyStart.Run(model, pricer, clock, cuts, hand.Keep));
        if (hand.Best is { IsComplete: true } best && best.Money > least)
        {
            hand.Offer(new Rebuilding(model, pricer, hand.Patterns(), clock, hand.Keep).Run(cuts, best, PoolGoal.Money, random));
        }
    }
}
