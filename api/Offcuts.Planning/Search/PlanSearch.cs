using Offcuts.Domain;
using Offcuts.Planning.Bounds;
using Offcuts.Planning.Layout;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>The whole search: over the choices of species, and again with less where not everything can be had.</summary>
internal sealed class PlanSearch(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, SearchClock clock)
{
    private readonly ModelBuilder builder = new(problem);
    private readonly List<(ScenarioSearch Search, Scenario Scenario)> searches = [];
    private (ScenarioSearch Search, Scenario Scenario)? winner;
    private Solution? reported;
    private double relaxedBound;
    private bool truncated;
    private TimeSpan firstPlan;

    /// <summary>Runs to the end or until time is up.</summary>
    public Plan Run()
    {
        var choices = new SpeciesChoices(problem);
        foreach (var scenario in choices.List())
        {
            Open(scenario);
        }

        StartAll();
        truncated = choices.IsTruncated;
        if (searches.Count > 1 && searches.TrueForAll(entry => entry.Scenario.Missing.Count == 0))
        {
            relaxedBound = BoundWithoutChoice(choices.Relaxed());
        }

        // The cheapest first: what it costs may rule the others out.
        foreach (var (search, _) in searches.OrderBy(entry => entry.Search.Best?.Money ?? long.MaxValue).ToList())
        {
            if (!IsProved)
            {
                search.Relax();
            }
        }

        foreach (var (search, _) in searches.OrderBy(entry => entry.Search.Bound).ThenBy(entry => entry.Search.Best?.Money ?? long.MaxValue).ToList())
        {
            if (!IsProved || winner?.Search == search)
            {
                search.Improve(limits.Seed, () => winner?.Search == search ? null : winner?.Search.Best?.Money);
            }
        }

        PickWinner();
        return Write(finished: !clock.IsOver && !clock.CutShort);
    }

    /// <summary>First plans for every choice of species; the first choice gets one whatever the clock says.</summary>
    private void StartAll()
    {
        for (var at = 0; at < searches.Count; at++)
        {
            if (at == 0 || !clock.IsOver)
            {
                searches[at].Search.Start();
                searches[at] = Reduce(searches[at]);
                PickWinner();
            }
        }

        var fewest = searches.Min(entry => MissingCount(entry.Scenario));
        searches.RemoveAll(entry => MissingCount(entry.Scenario) > fewest);
        PickWinner();
    }

    private bool IsProved => winner?.Search.Best is { } best && best.Money <= Bound();

    private (ScenarioSearch Search, Scenario Scenario) Open(Scenario scenario)
    {
        var entry = (new ScenarioSearch(builder.Build(scenario.Wanted), clock, _ => Improved()), scenario);
        searches.Add(entry);
        return entry;
    }

    /// <summary>Where boards and offers are too few for all that is wanted, plans for what they do suffice for.</summary>
    private (ScenarioSearch Search, Scenario Scenario) Reduce((ScenarioSearch Search, Scenario Scenario) entry)
    {
        while (entry.Search.Best is { IsComplete: false })
        {
            // The greedy plan may merely have been clumsy: search before giving a part up.
            entry.Search.Relax();
            entry.Search.Improve(limits.Seed, () => null);
            if (entry.Search.Best is not { IsComplete: false } best)
            {
                break;
            }

            var scenario = Less(entry, best.Short);
            entry = (new ScenarioSearch(builder.Build(scenario.Wanted), clock, _ => Improved()), scenario);
            entry.Search.Start();
        }

        return entry;
    }

    private static Scenario Less((ScenarioSearch Search, Scenario Scenario) entry, long[] shortage)
    {
        var rows = entry.Search.Model.Rows;
        var missing = entry.Scenario.Missing.ToList();
        var parts = entry.Scenario.Wanted.Parts.Select(want =>
        {
            var lacking = rows.OfType<PartRow>().Where(row => row.Name == want.Part.Name).Sum(row => Math.Max(0, shortage[row.Index]));
            Miss(want.Part.Name, (int)lacking);
            return want with { Quantity = want.Quantity - (int)lacking };
        }).Where(want => want.Quantity > 0).ToList();
        var panels = entry.Scenario.Wanted.Panels.Select(want =>
        {
            var copies = rows.OfType<StripRow>().Where(row => row.Name == want.Panel.Name && shortage[row.Index] > 0).Select(row => row.Copy).Distinct().Count();
            Miss(want.Panel.Name, copies);
            return want with { Copies = [.. want.Copies.Take(want.Copies.Count - copies)] };
        }).Where(want => want.Copies.Count > 0).ToList();
        return new Scenario(new Wanted(parts, panels), missing);

        void Miss(string name, int count)
        {
            if (count > 0)
            {
                var known = missing.FindIndex(part => part.Name == name);
                var before = known < 0 ? 0 : missing[known].Quantity;
                missing.RemoveAll(part => part.Name == name);
                missing.Add(new MissingPart(name, before + count, MissingReason.TooFew));
            }
        }
    }

    private static int MissingCount(Scenario scenario) => scenario.Missing.Sum(part => part.Quantity);

    private double BoundWithoutChoice(Scenario relaxed)
    {
        var search = new ScenarioSearch(builder.Build(relaxed.Wanted), clock, _ => { });
        search.Relax();
        return search.Bound;
    }

    private void PickWinner()
    {
        foreach (var entry in searches)
        {
            if (entry.Search.Best is { IsComplete: true } best
                && (winner?.Search.Best is not { } leading || !searches.Contains(winner.Value) || best.Beats(leading)))
            {
                winner = entry;
            }
        }
    }

    private void Improved()
    {
        PickWinner();
        if (winner?.Search.Best is not { } best)
        {
            return;
        }

        firstPlan = firstPlan == TimeSpan.Zero ? clock.Elapsed : firstPlan;
        var isNew = !ReferenceEquals(reported, best);
        reported = best;
        progress?.Invoke(new PlanProgress(
            clock.Elapsed, new Money(best.Money), new Money(Bound()), isNew ? Write(finished: false) : null));
    }

    /// <summary>No choice of species gives a plan for less than the least of their bounds.</summary>
    private long Bound()
    {
        var least = truncated ? 0 : searches.Min(entry => entry.Search.RoundedBound);
        return winner?.Search.Best is { } best
            ? Math.Max(least, AttainableTotals.RoundUp(relaxedBound, best.Money, problem.Offers.SelectMany(OfferSize.Of).Select(size => size.Price.MinorUnits)))
            : least;
    }

    private Plan Write(bool finished)
    {
        var (search, scenario) = winner ?? searches[0];
        var solution = search.Best is { IsComplete: true } best ? best : new Solution(search.Model, []);
        return PlanWriter.Write(search.Model, solution, scenario.Missing, Bound(), new PlanRun(
            limits.Seed, limits.Budget, clock.Elapsed, firstPlan, finished, Planner.Version));
    }
}
