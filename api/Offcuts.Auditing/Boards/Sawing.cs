using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// Makes the listed cuts in order. Each must go right through one of the pieces that are there by then and be a kerf wide, or less where it
/// runs out at the edge of that piece. What is left at the end must be the pieces of the plan, so neighbours are a kerf apart.
/// With a kerf of nothing the cuts need not be listed: then each remaining piece must fall apart by straight cuts right through.
/// </summary>
internal static class Sawing
{
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        var board = cut.Board;
        var kerf = scope.Problem.Shop.Kerf;
        var whole = new SawnPiece(cut.Face);
        var leaves = new List<SawnPiece> { whole };
        foreach (var (index, saw) in board.Cuts.Index())
        {
            scope.Findings.Require(
                saw.Order == index + 1, AuditRule.SawCuts, $"Board {board.Number}: cut {index + 1} in order has the number {saw.Order}.");
            var leaf = leaves.Find(piece => piece.CanBeCut(saw, kerf));
            if (leaf is null)
            {
                scope.Findings.Add(AuditRule.SawCuts, $"Board {board.Number}: cut {saw.Order} does not go right through one piece with a kerf of {kerf}.");
                return;
            }

            leaves.Remove(leaf);
            leaves.AddRange(leaf.Cut(saw));
        }

        if (Match(scope, cut, leaves))
        {
            Stages.Check(scope, cut, whole);
        }
    }

    /// <summary>Gives every piece of the plan the piece from which it was cut.</summary>
    private static bool Match(AuditScope scope, SourcedCut cut, List<SawnPiece> leaves)
    {
        var sound = true;
        foreach (var leaf in leaves)
        {
            var inside = cut.Board.Pieces.Where(piece => leaf.At.Contains(piece.At)).ToList();
            var apart = inside.Count > 0
                && (scope.Problem.Shop.Kerf == Length.Zero ? leaf.FallApart(inside) : inside.Count == 1 && inside[0].At == leaf.At);
            scope.Findings.Require(apart, AuditRule.SawCuts, $"Board {cut.Board.Number}: the cuts leave {leaf.At}, which is not one piece of the plan.");
            leaf.Holds(inside);
            sound &= apart;
        }

        return sound;
    }
}
