using Offcuts.Domain;

namespace Offcuts.Planning.Deciding;

/// <summary>
/// What a limit of money is about, for all questions that have one. A further stop counts in the choice between plans, but nobody is paid for it: so it is
/// asked of the same problem in which it counts nothing, where the outlay of a plan, and every bound on it, is money.
/// </summary>
internal static class Spending
{
    /// <summary>The problem whose outlays are what is paid for wood and to its and the items' suppliers.</summary>
    public static PlanningProblem AsPaid(PlanningProblem problem) =>
        problem.Shop.SecondStop == Money.Zero ? problem : problem with { Shop = problem.Shop with { SecondStop = Money.Zero } };

    /// <summary>The problem whose outlays are the wood alone: what the suppliers of ready-made items charge is no wood, and rules nothing out.</summary>
    public static PlanningProblem OfWood(PlanningProblem problem) => AsPaid(problem) with { Terms = [] };
}
