using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>What has changed from one plan to the next, from the domain to the wire.</summary>
internal static class ChangeMapping
{
    /// <summary>The comparison with the plan that the problem starts from; null if it starts from none.</summary>
    public static ChangesRecord? ToRecord(Plan plan, PlanningProblem problem)
    {
        if (problem.Earlier is not { } earlier)
        {
            return null;
        }

        var changes = PlanComparison.Of(earlier, problem, plan);
        var text = new ChangeText(earlier.Problem, problem);
        return new ChangesRecord(
            MoneyText.ToDecimal(changes.EarlierWoodCost, changes.EarlierCurrency),
            MoneyText.ToDecimal(changes.EarlierWoodCost + changes.EarlierItemCost + changes.EarlierChargeCost, changes.EarlierCurrency),
            changes.EarlierCurrency,
            [.. changes.Boards.Select(board => new BoardChangeRecord(
                Words.Of(board.Kind), board.Board.BoardId, board.Board.OfferId, board.Kind == BoardChangeKind.Dropped ? null : board.Board.Number,
                board.EarlierNumber, [.. board.Reasons.Select(reason => new ChangeReasonRecord(Words.Of(reason.Kind), reason.Part))], text.Of(board)))],
            [.. changes.Parts.Select(part => new PartChangeRecord(part.Name, Sources(part.Earlier), Sources(part.Now), text.Of(part)))],
            [.. changes.Purchases.Select(purchase => new PurchaseChangeRecord(
                purchase.Offer.Offer.Id, text.NameOf(purchase.Offer.Offer.Id), ShopMapping.ToRecord(purchase.Offer.Size), purchase.Earlier, purchase.Now))]);
    }

    private static List<PieceSourceRecord> Sources(IReadOnlyList<PieceSource> sources) =>
        [.. sources.Select(source => new PieceSourceRecord(source.BoardId, source.OfferId, source.Count))];
}
