using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>A plan of a tiny case beside what trying everything gave, in minor units.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Own">The least money of the kind of plans that the planner looks for; null if not everything can be made.</param>
/// <param name="All">The least money by all cutting rules.</param>
internal sealed record TinyVerdict(Plan Plan, int? Own, int? All)
{
    /// <summary>
    /// What can never be so, however short the search: a plan cheaper than all plans, a bound above one that can be made, a proof of more than the least
    /// money, everything made of boards that do not suffice.
    /// </summary>
    public string? Falsehood() => Plan.Status == PlanStatus.Incomplete ? null
        : All is null ? "made of too little"
        : Plan.WoodCost.MinorUnits < All ? "cheaper than possible"
        : Plan.WoodBound.MinorUnits > All ? "bound too high"
        : Plan.Status == PlanStatus.Proved && Plan.WoodCost.MinorUnits != All ? "not the least, yet proved"
        : null;

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Plan.Status}, cost {Plan.WoodCost.MinorUnits}, bound {Plan.WoodBound.MinorUnits}; least {Own}, by all cutting rules {All}; ended by itself: {Plan.Run.Finished}");
}
