using Offcuts.Planning.Bounds;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Mixing;

/// <summary>The program of a mix with one choice of species.</summary>
/// <param name="builds">The builds.</param>
/// <param name="model">The most copies of all of them.</param>
/// <param name="most">Most copies of each.</param>
internal sealed class MixProgram(MixBuilds builds, PlanningModel model, IReadOnlyList<int> most)
{
    /// <summary>A piece counts so many minor units: it only decides between mixes of the same wood.</summary>
    private const double PerPiece = 1e-4;

    private readonly PatternPricer pricer = new(model);
    private FreeDemand? demand;

    private FreeDemand Demand => demand ??= new FreeDemand(
        model, pricer, [.. builds.Ranks.Select((rank, build) => new FreeCount(rank.MinorUnits + (PerPiece * rank.Pieces), builds.Least[build], most[build], builds.Most[build]))], builds.OfName);

    /// <summary>Solves the linear program; whatever the solver's rounding did, and even if time ran out, no mix exceeds the cut.</summary>
    public MixCut Relax(SearchClock clock)
    {
        if (model.Rows.Count == 0)
        {
            return new MixCut([.. builds.Ranks.Select(_ => 0.0)], 0);
        }

        var met = new List<Pattern>();
        GreedyStart.Run(model, pricer, clock, [], met.Add);
        return CutAt(PriceList.FromDuals(model.Rows, Demand.Relax(clock, met), [.. model.Rows.Select(row => row.Needed)], 0).Even(model));
    }

    /// <inheritdoc cref="FreeDemand.Whole"/>
    public int[]? Whole(TimeSpan limit) => Demand.Whole(limit);

    /// <summary>
    /// For any prices v >= 0 what a plan makes is worth at least sum_d n_d (v of a copy), and no more than every board's best pattern.
    /// </summary>
    private MixCut CutAt(PriceList prices)
    {
        double[] perCopy = [.. Enumerable.Range(0, builds.Count).Select(build => builds.Most[build] == 0 ? 0
            : prices.OfDemand(model.Rows.Where(row => Demand.ThingOf(row) == build).Select(row => row.Index)) / builds.Most[build])];
        return new MixCut(perCopy, prices.OfDemand() - SafeBound.Of(model, pricer, prices));
    }
}
