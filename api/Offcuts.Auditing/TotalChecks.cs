using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Money and worth add up, and nothing is called proved that is not.</summary>
internal static class TotalChecks
{
    public static void Run(AuditSheet sheet)
    {
        var (problem, plan) = (sheet.Problem, sheet.Plan);
        var wood = plan.Purchases.Sum(purchase => PriceOf(problem, purchase) * purchase.Count);
        sheet.Require(plan.WoodCost.MinorUnits == wood, AuditRule.Totals, $"The wood costs {wood}, not {plan.WoodCost.MinorUnits}.");
        var items = problem.Design.Items.Sum(item => item.UnitPrice.MinorUnits * item.Quantity);
        sheet.Require(plan.ItemCost.MinorUnits == items, AuditRule.Totals, $"The items cost {items}, not {plan.ItemCost.MinorUnits}.");
        var consumed = plan.Boards.Sum(cut => Consumed(problem, cut));
        sheet.Require(plan.WorthConsumed.MinorUnits == consumed, AuditRule.Totals, $"Worth {consumed} is consumed, not {plan.WorthConsumed.MinorUnits}.");
        var returned = plan.Boards.Sum(cut => Returned(problem, cut));
        sheet.Require(plan.WorthReturned.MinorUnits == returned, AuditRule.Totals, $"Worth {returned} is returned, not {plan.WorthReturned.MinorUnits}.");
        Proof(sheet);
    }

    private static void Proof(AuditSheet sheet)
    {
        var plan = sheet.Plan;
        sheet.Require(
            plan.WoodBound >= Money.Zero && plan.WoodBound <= plan.WoodCost, AuditRule.Proof,
            $"The bound {plan.WoodBound.MinorUnits} is not between nothing and the cost {plan.WoodCost.MinorUnits}.");
        var status = plan.Missing.Count > 0 ? PlanStatus.Incomplete
            : plan.WoodBound == plan.WoodCost ? PlanStatus.Proved
            : PlanStatus.Feasible;
        sheet.Require(plan.Status == status, AuditRule.Proof, $"The status is {plan.Status}; it should be {status}.");
    }

    private static long PriceOf(PlanningProblem problem, Purchase purchase)
    {
        var offer = problem.Offers.FirstOrDefault(each => each.Id == purchase.Offer.Offer.Id);
        return offer is null ? 0 : OfferSize.Of(offer).Where(size => size.Size == purchase.Offer.Size).Select(size => size.Price.MinorUnits).FirstOrDefault();
    }

    private static long Consumed(PlanningProblem problem, BoardCut cut) =>
        cut.BoardId is not null && problem.Stock.FirstOrDefault(owned => owned.Id == cut.BoardId) is { } board
            ? Worth.OfBoard(board, problem.Rates.Of(board.Species), problem.Shop.Keep, problem.Today).MinorUnits
            : 0;

    private static long Returned(PlanningProblem problem, BoardCut cut) => cut.Pieces.OfType<LeftoverPiece>().Sum(piece => Worth.Of(
        new Dimensions(cut.Size.Thickness, piece.At.Width, piece.At.Length), problem.Rates.Of(cut.Species), problem.Shop.Keep).MinorUnits);
}
