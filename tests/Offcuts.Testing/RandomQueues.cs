using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random shops with several builds to plan together.</summary>
public static class RandomQueues
{
    /// <summary>The shop of a seed with the designs of this and of other seeds, as many as are asked for; the same seed gives the same.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="scale">How large the shop is.</param>
    /// <param name="builds">How many builds.</param>
    /// <param name="mustBuy">Whether the stock cannot suffice, and offers can.</param>
    public static PlanningProblem Create(int seed, ShopScale scale, int builds, bool mustBuy)
    {
        var kind = RandomShops.Kind(seed, scale) with { MustBuy = mustBuy };
        var problem = RandomShops.Create(seed, kind);
        var accepted = problem.Design.Parts.SelectMany(part => part.Species).Concat(problem.Design.Panels.SelectMany(panel => panel.Species)).ToHashSet(StringComparer.Ordinal);
        var others = Enumerable.Range(1, 200).Select(next => RandomShops.Create(seed + (next * 1000), kind).Design)
            .Where(design => design.Parts.SelectMany(part => part.Species).Concat(design.Panels.SelectMany(panel => panel.Species)).All(accepted.Contains))
            .Take(builds - 1);
        var (design, names) = JointDesign.Of([.. others.Prepend(problem.Design).Select((each, at) => each with { Name = FormattableString.Invariant($"build {at + 1}") })]);
        return problem with { Design = design, Builds = names };
    }
}
