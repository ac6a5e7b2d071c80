using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>Each board of the plan is what it says it is: a free board in stock or a size of an offer, unchanged; and it has its number.</summary>
internal static class Identity
{
    public static void Check(AuditScope scope)
    {
        foreach (var (index, cut) in scope.Cuts.Index())
        {
            scope.Findings.Require(
                cut.Board.Number == index + 1, AuditRule.Numbering, $"Board {index + 1} in cutting order has the number {cut.Board.Number}.");
            Check(scope.Findings, cut);
        }
    }

    private static void Check(Findings findings, SourcedCut cut)
    {
        var board = cut.Board;
        if ((board.BoardId is null) == (board.OfferId is null))
        {
            findings.Add(AuditRule.BoardIdentity, $"Board {board.Number} must be either from stock or bought.");
        }
        else if (cut.Stock is { } stock)
        {
            findings.Require(stock.Status == BoardStatus.Free, AuditRule.BoardIdentity, $"Board {stock.Id} is not free: {stock.Status}.");
            findings.Require(stock.Size == board.Size, AuditRule.BoardIdentity, $"Board {stock.Id} has another size in stock: {stock.Size}.");
            Check(findings, board, stock.Kind, stock.Species, stock.Surface, stock.Defects);
        }
        else if (cut.Offer is { } offer)
        {
            Check(findings, board, offer.Offer.Kind, offer.Offer.Species, offer.Offer.Surface, []);
        }
        else
        {
            findings.Add(AuditRule.BoardIdentity, $"There is no board {board.BoardId} in stock and no offer {board.OfferId} of the size {board.Size}.");
        }
    }

    private static void Check(
        Findings findings, BoardCut board, BoardKind kind, string species, Surface surface, IReadOnlyList<Defect> defects)
    {
        findings.Require(board.Kind == kind, AuditRule.BoardIdentity, $"Board {board.Number} is called {board.Kind} but is {kind}.");
        findings.Require(board.Species == species, AuditRule.BoardIdentity, $"Board {board.Number} is called {board.Species} but is {species}.");
        findings.Require(board.Surface == surface, AuditRule.BoardIdentity, $"Board {board.Number} is called {board.Surface} but is {surface}.");
        findings.Require(
            board.Defects.ToHashSet().SetEquals(defects),
            AuditRule.BoardIdentity, $"Board {board.Number} has {defects.Count} defects on record, the plan says otherwise.");
    }
}
