using Offcuts.Domain;

namespace Offcuts.Pictures;

/// <summary>A plan with what it was made from and what it is called: all that its pictures show.</summary>
/// <param name="Plan">The plan, audited.</param>
/// <param name="Problem">What it was made from.</param>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="DesignVersion">Version of the design that it builds.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Catalogue">The species at hand, for their names; null for those of the reference data alone.</param>
/// <param name="MadeWith">What it was made with of all that its design leaves open, in words; null if that is nothing.</param>
/// <param name="EarlierId">Id of the plan that it started from, which <see cref="PlanningProblem.Earlier"/> has; null if it started from none.</param>
public sealed record PlanDocument(
    Plan Plan, PlanningProblem Problem, string PlanId, string DesignVersion, DateTimeOffset MadeAt, SpeciesCatalogue? Catalogue = null,
    string? MadeWith = null, string? EarlierId = null)
{
    /// <summary>The unit in which its sizes are shown.</summary>
    internal DisplayUnit Unit => Problem.Shop.Unit;

    /// <summary>The species' name as people say it; its id if the species list does not have it.</summary>
    internal string Species(string id) => Species().NameOf(id);

    /// <summary>The species at hand.</summary>
    internal SpeciesCatalogue Species() => Catalogue ?? SpeciesCatalogue.Default;

    /// <summary>Where a board in stock lies, and how hard it is to get at if that is not easy; null if nobody said.</summary>
    internal string? Lies(Board? stock) => stock is null ? null : PlaceText.Of(stock.Place, Problem.ReachOf(stock));

    /// <summary>The board with a number.</summary>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.NotFound"/>: the plan cuts no board of that number.</exception>
    internal BoardCut Board(int number) => Plan.Boards.FirstOrDefault(board => board.Number == number)
        ?? throw new OffcutsException(
            ErrorCode.NotFound,
            FormattableString.Invariant($"Plan {PlanId} has no board {number}: give a number from 1 to {Plan.Boards.Count}."));
}
