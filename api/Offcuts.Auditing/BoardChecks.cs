using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Boards are what they are said to be and are used no more often than they are there.</summary>
internal static class BoardChecks
{
    public static void Run(AuditSheet sheet)
    {
        for (var at = 0; at < sheet.Plan.Boards.Count; at++)
        {
            var board = sheet.Plan.Boards[at];
            sheet.Require(board.Number == at + 1, AuditRule.Numbering, $"Board {at + 1} in order has number {board.Number}.");
            Identity(sheet, board);
        }

        StockUse(sheet);
        OfferUse(sheet);
    }

    private static void Identity(AuditSheet sheet, BoardCut cut)
    {
        if ((cut.BoardId is null) == (cut.OfferId is null))
        {
            sheet.Find(AuditRule.BoardIdentity, $"Board {cut.Number} must come either from stock or from an offer.");
        }
        else if (cut.BoardId is not null)
        {
            var owned = sheet.Problem.Stock.FirstOrDefault(board => board.Id == cut.BoardId);
            var same = owned is not null && owned.Status == BoardStatus.Free && owned.Kind == cut.Kind && owned.Species == cut.Species
                && owned.Surface == cut.Surface && owned.Size == cut.Size && owned.Defects.SequenceEqual(cut.Defects);
            sheet.Require(same, AuditRule.BoardIdentity, $"Board {cut.Number} is not board {cut.BoardId} of the stock, free and as recorded.");
        }
        else
        {
            var offer = sheet.Problem.Offers.FirstOrDefault(each => each.Id == cut.OfferId);
            var same = offer is not null && offer.Kind == cut.Kind && offer.Species == cut.Species && offer.Surface == cut.Surface
                && cut.Defects.Count == 0 && OfferSize.Of(offer).Any(size => size.Size == cut.Size);
            sheet.Require(same, AuditRule.BoardIdentity, $"Board {cut.Number} is not what offer {cut.OfferId} sells.");
        }
    }

    private static void StockUse(AuditSheet sheet)
    {
        foreach (var uses in sheet.Plan.Boards.Where(cut => cut.BoardId is not null).GroupBy(cut => cut.BoardId))
        {
            var quantity = sheet.Problem.Stock.Where(board => board.Id == uses.Key).Sum(board => (long)board.Quantity);
            sheet.Require(uses.Count() <= quantity, AuditRule.OverUse, $"Board {uses.Key} is cut {uses.Count()} times; there are {quantity}.");
            Copies(sheet, uses, uses.Key!, quantity);
        }
    }

    private static void OfferUse(AuditSheet sheet)
    {
        foreach (var uses in sheet.Plan.Boards.Where(cut => cut.OfferId is not null).GroupBy(cut => cut.OfferId))
        {
            var available = sheet.Problem.Offers.FirstOrDefault(offer => offer.Id == uses.Key)?.Available ?? int.MaxValue;
            sheet.Require(uses.Count() <= available, AuditRule.OverUse, $"Offer {uses.Key} is used {uses.Count()} times; {available} can be had.");
            Copies(sheet, uses, uses.Key!, uses.Count());
        }

        var listed = sheet.Plan.Purchases.GroupBy(purchase => (purchase.Offer.Offer.Id, purchase.Offer.Size))
            .ToDictionary(group => group.Key, group => group.Sum(purchase => purchase.Count));
        var bought = sheet.Plan.Boards.Where(cut => cut.OfferId is not null).GroupBy(cut => (cut.OfferId!, cut.Size))
            .ToDictionary(group => group.Key, group => group.Count());
        var equal = listed.Count == bought.Count && listed.All(pair => bought.TryGetValue(pair.Key, out var count) && count == pair.Value);
        sheet.Require(equal, AuditRule.Purchases, $"The purchases are not the boards that are bought.");
    }

    private static void Copies(AuditSheet sheet, IEnumerable<BoardCut> uses, string id, long most)
    {
        var copies = uses.Select(cut => cut.Copy).ToList();
        sheet.Require(
            copies.Distinct().Count() == copies.Count && copies.TrueForAll(copy => copy >= 1 && copy <= most),
            AuditRule.OverUse, $"The copies of {id} are not different ones of {most}.");
    }
}
