using System.Collections.Concurrent;
using System.Globalization;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>
/// Compares the plans of random shops with those of the same shops changed. What must hold between the least money of the two is asserted of the
/// costs where both are proved. Where one is not, it still follows for a bound and a cost: if the change can only help, the cost before is that of
/// a plan that still can be made, so no bound after it may be higher.
/// </summary>
internal static class Relation
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMilliseconds(250));
    private static readonly ConcurrentDictionary<int, Lazy<Plan>> Unchanged = new();

    /// <summary>The change never makes the least money more.</summary>
    public static void NeverDearer(Func<PlanningProblem, PlanningProblem?> change, Func<PlanningProblem, PlanningProblem>? prepare = null) =>
        Compare(change, 1, Holds.NeverDearer, prepare);

    /// <summary>The change makes the least money so many times what it was; both are made of shops that were prepared alike.</summary>
    public static void Costs(int times, Func<PlanningProblem, PlanningProblem?> change, Func<PlanningProblem, PlanningProblem>? prepare = null) =>
        Compare(change, times, Holds.Equal, prepare);

    /// <summary>The shop of a seed: every other one must buy.</summary>
    public static PlanningProblem Shop(int seed) => RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Smallest));

    private static void Compare(
        Func<PlanningProblem, PlanningProblem?> change, int times, Holds holds, Func<PlanningProblem, PlanningProblem>? prepare = null)
    {
        var (judged, bought) = (0, 0);
        foreach (var seed in Enumerable.Range(5000, 120))
        {
            var problem = prepare is null ? Shop(seed) : prepare(Shop(seed));
            if (change(problem) is not { } changed)
            {
                continue;
            }

            var before = prepare is null
                ? Unchanged.GetOrAdd(seed, key => new Lazy<Plan>(() => Planner.Solve(Shop(key), Limits))).Value
                : Planner.Solve(problem, Limits);
            var after = Planner.Solve(changed, Limits);
            if (Fault(before, after, times, holds) is { } fault)
            {
                Assert.Fail(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {fault}; before {Say(before)}, after {Say(after)}"));
            }

            var proved = before.Status == PlanStatus.Proved && after.Status == PlanStatus.Proved;
            judged += proved ? 1 : 0;
            bought += proved && before.WoodCost > Money.Zero ? 1 : 0;
        }

        Assert.True(judged >= 20 && bought >= 10, $"Only {judged} shops were proved before and after, {bought} of them with something to buy.");
    }

    private static string? Fault(Plan before, Plan after, int times, Holds holds)
    {
        if (before.Status == PlanStatus.Incomplete)
        {
            // What is missing differs, so the money says nothing; but nothing can go missing by a change that keeps the costs.
            return holds == Holds.Equal && Missing(before) != Missing(after) ? "not the same is missing" : null;
        }

        if (after.Status == PlanStatus.Incomplete)
        {
            return "something went missing";
        }

        var was = before.WoodCost * times;
        if (after.WoodBound > was || (holds == Holds.Equal && before.WoodBound * times > after.WoodCost))
        {
            return "a bound is above the cost of a plan that can be made";
        }

        var proved = before.Status == PlanStatus.Proved && after.Status == PlanStatus.Proved;
        return proved && (holds == Holds.Equal ? after.WoodCost != was : after.WoodCost > was) ? "the costs contradict each other" : null;
    }

    private static int Missing(Plan plan) => plan.MissingCount;

    private static string Say(Plan plan) => string.Create(
        CultureInfo.InvariantCulture, $"{plan.Status} {plan.WoodCost.MinorUnits} (bound {plan.WoodBound.MinorUnits}, {Missing(plan)} missing)");

    private enum Holds
    {
        NeverDearer,
        Equal,
    }
}
