using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>
/// Random shops planned again after one board is gone and one piece more is wanted, from the plan before and from nothing: how soon a plan is there, what it
/// costs, and how many of the boards that are still there are cut as they were.
/// </summary>
internal static class ReplanTable
{
    private static readonly (string Name, ShopScale Scale, bool MustBuy)[] Classes =
    [
        ("40 boards, 12 parts, enough", ShopScale.Workshop, false), ("40 boards, 12 parts, must buy", ShopScale.Workshop, true),
        ("300 boards, 40 parts, enough", ShopScale.Large, false), ("300 boards, 40 parts, must buy", ShopScale.Large, true),
    ];

    /// <summary>Plans so many shops of each class again, both ways.</summary>
    public static void Print(IReadOnlyList<int> seeds, TimeSpan budget, string? only, TextWriter output)
    {
        output.WriteLine("                                       from the plan before                                 from nothing");
        output.WriteLine("class                             seed  first s  best s  all s        cost  first cost   kept  first s  best s  all s        cost  first cost   kept  faults");
        foreach (var (name, scale, mustBuy) in Classes.Where(each => only is null || each.Name.Contains(only, StringComparison.Ordinal)))
        {
            var rows = seeds.Select(seed => Row(name, seed, Create(seed, scale, mustBuy), budget, output)).OfType<(Replanned Warm, Replanned Cold)>().ToList();
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{name,-32}   all: {Sum([.. rows.Select(row => row.Warm)])}; from nothing {Sum([.. rows.Select(row => row.Cold)])}; dearer {rows.Count(row => row.Warm.Cost > row.Cold.Cost)}, cheaper {rows.Count(row => row.Warm.Cost < row.Cold.Cost)} of {rows.Count}"));
        }
    }

    private static PlanningProblem Create(int seed, ShopScale scale, bool mustBuy) => mustBuy && scale == ShopScale.Workshop
        ? RandomShops.MustBuy(seed)
        : RandomShops.Create(seed, RandomShops.Kind(seed, scale) with { MustBuy = mustBuy });

    private static (Replanned Warm, Replanned Cold)? Row(string name, int seed, PlanningProblem problem, TimeSpan budget, TextWriter output)
    {
        var earlier = new EarlierPlan(problem, Planner.Solve(problem, new PlanLimits(budget)));
        if (SmallChanges.OneBoardGone(problem, earlier.Plan, seed) is not { } less)
        {
            return null;
        }

        var changed = SmallChanges.OnePieceMore(less, seed);
        var warm = Replanned.Of(changed with { Earlier = earlier }, earlier, budget);
        var cold = Replanned.Of(changed, earlier, budget);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-32} {seed,5} {warm} {cold} {warm.Faults + cold.Faults,7}"));
        return (warm, cold);
    }

    private static string Sum(List<Replanned> plans) => string.Create(
        CultureInfo.InvariantCulture,
        $"first {plans.Average(plan => plan.First):0.00} s, best {plans.Average(plan => plan.Best):0.00} s, all {plans.Average(plan => plan.All):0.00} s, {100.0 * plans.Sum(plan => plan.Kept) / plans.Sum(plan => plan.There):0} % kept");
}

/// <summary>A plan made again.</summary>
/// <param name="First">Seconds to the first plan.</param>
/// <param name="Best">Seconds to the last plan that cost less than those before.</param>
/// <param name="All">Seconds in all.</param>
/// <param name="Cost">Money for wood in minor units.</param>
/// <param name="FirstCost">The same of the first plan.</param>
/// <param name="Kept">Boards cut as in the earlier plan.</param>
/// <param name="There">Boards of the earlier plan that are still there.</param>
/// <param name="Faults">Findings of the auditor.</param>
internal sealed record Replanned(double First, double Best, double All, long Cost, long FirstCost, int Kept, int There, int Faults)
{
    public static Replanned Of(PlanningProblem problem, EarlierPlan earlier, TimeSpan budget)
    {
        var found = new List<(double At, long Cost)>();
        var plan = Planner.Solve(problem, new PlanLimits(budget), progress =>
        {
            if (progress.Cost is { } cost && (found.Count == 0 || cost.MinorUnits < found[^1].Cost))
            {
                found.Add((progress.Elapsed.TotalSeconds, cost.MinorUnits));
            }
        });
        var boards = PlanComparison.Of(earlier, problem, plan).Boards;
        return new Replanned(
            found[0].At, found[^1].At, plan.Run.Elapsed.TotalSeconds, plan.WoodCost.MinorUnits, found[0].Cost,
            boards.Count(board => board.Kind == BoardChangeKind.Kept),
            boards.Count(board => board.EarlierNumber is not null && board.Reasons.All(reason => reason.Kind is not (ChangeReasonKind.BoardGone or ChangeReasonKind.BoardFewer))),
            Auditor.Audit(problem, plan).Count);
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{First,8:0.00} {Best,7:0.00} {All,6:0.00} {Cost,11} {FirstCost,11} {Kept,3}/{There,-3}");
}
