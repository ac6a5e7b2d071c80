namespace Offcuts.Domain;

/// <summary>A plan made before for much the same, from which a new one starts: what still can be is kept.</summary>
/// <param name="Problem">What it was made from.</param>
/// <param name="Plan">The plan.</param>
public sealed record EarlierPlan(PlanningProblem Problem, Plan Plan);
