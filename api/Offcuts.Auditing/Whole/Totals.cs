using Offcuts.Auditing.Boards;
using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>Rule 10: the cost of wood is that of the bought boards, the cost of items that of the design's, and worth follows <see cref="Worth"/>.</summary>
internal static class Totals
{
    public static void Check(AuditScope scope)
    {
        var problem = scope.Problem;
        Require("wood costs", scope.Plan.WoodCost, scope.Cuts.Where(cut => cut.Offer is not null).Select(scope.Prices.Of));
        Require("items cost", scope.Plan.ItemCost, problem.Design.Items.Select(item => item.UnitPrice * item.Quantity));
        Charges.Check(scope);
        Require("worth is consumed", scope.Plan.WorthConsumed, scope.Cuts.Where(cut => cut.Stock is not null)
            .Select(cut => Worth.Aged(OfPiece(cut.Stock!.Species, cut.Stock.Size), cut.Stock, problem.Today)));
        Require("worth is returned", scope.Plan.WorthReturned, scope.Cuts.SelectMany(cut => cut.Board.Pieces.OfType<LeftoverPiece>()
            .Where(piece => piece.At.Length > Length.Zero && piece.At.Width > Length.Zero)
            .Select(piece => OfPiece(cut.Board.Species, new(cut.Board.Size.Thickness, piece.At.Width, piece.At.Length)))));

        Money OfPiece(string species, Dimensions size) =>
            Keeping.IsKept(problem.Shop, species, size) ? Worth.OfKept(size, problem.Rates.Of(species)) : Money.Zero;

        void Require(string what, Money claimed, IEnumerable<Money> terms)
        {
            var sum = terms.Aggregate(Int128.Zero, (total, term) => total + term.MinorUnits);
            scope.Findings.Require(
                claimed.MinorUnits == sum, AuditRule.Totals, $"The plan says {what}: {claimed.MinorUnits} minor units; it adds up to {sum}.");
        }
    }
}
