using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>A plan of a tiny case beside what trying everything gave, in minor units.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Least">The least money; null if not everything can be made.</param>
internal sealed record TinyVerdict(Plan Plan, int? Least)
{
    /// <summary>
    /// What can never be so, however short the search: a plan cheaper than all plans, a bound above one that can be made, a proof of more than the least
    /// money, everything made of boards that do not suffice.
    /// </summary>
    public string? Falsehood() => Plan.Status == PlanStatus.Incomplete ? null
        : Least is null ? "made of too little"
        : Plan.WoodCost.MinorUnits < Least ? "cheaper than possible"
        : Plan.WoodBound.MinorUnits > Least ? "bound too high"
        : Plan.Status == PlanStatus.Proved && Plan.WoodCost.MinorUnits != Least ? "not the least, yet proved"
        : null;

    /// <summary>What a search of a tiny case must not miss.</summary>
    public string? Miss() => Least is not null && Plan.Status == PlanStatus.Incomplete ? "something is missing"
        : Least is not null && Plan.WoodCost.MinorUnits != Least ? "not the least money"
        : null;

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Plan.Status}, cost {Plan.WoodCost.MinorUnits}, bound {Plan.WoodBound.MinorUnits}; least {Least}; ended by itself: {Plan.Run.Finished}");
}
