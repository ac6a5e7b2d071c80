using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// How often the direction of cutting turns on the way from a board to a blank or strip. The first stage is in the board's first direction.
/// The last cut that separates the piece from another blank or strip belongs at the latest to stage three (two without
/// <see cref="Shop.Recut"/>); the cuts behind it only trim the piece, in one more stage at most.
/// Cuts before the first that separates two blanks or strips are not counted: they free the board's clear part from its ends, edges and defects.
/// With a kerf of nothing and unlisted cuts nothing is checked here, because the order of the cuts is not known.
/// </summary>
internal static class Stages
{
    public static void Check(AuditScope scope, SourcedCut cut, SawnPiece whole)
    {
        if (scope.Problem.Shop.Kerf == Length.Zero)
        {
            return;
        }

        var start = whole;
        while (start.Halves.Count > 0 && start.Halves.Count(half => half.Useful > 0) < 2)
        {
            start = start.Halves.FirstOrDefault(half => half.Useful > 0) ?? start.Halves[0];
        }

        var most = scope.Problem.Shop.Recut ? 3 : 2;
        Walk(start, 0, 0, cut.Board.FirstCut == FirstCut.Crosscut ? FirstCut.Rip : FirstCut.Crosscut);

        void Walk(SawnPiece piece, int stage, int separating, FirstCut last)
        {
            if (piece.Useful == 0)
            {
                return;
            }

            if (piece.Direction is not { } direction)
            {
                scope.Findings.Require(
                    separating <= most && stage <= most + 1, AuditRule.Stages,
                    $"Board {cut.Board.Number}: the piece at {piece.At} is separated at stage {separating} and free at stage {stage}; {most} and trimming are allowed.");
                return;
            }

            // Before the first cut the stage is 0, so a board that is not cut in its first direction begins with stage 2.
            var next = stage == 0 ? (direction == cut.Board.FirstCut ? 1 : 2) : direction == last ? stage : stage + 1;
            var separates = piece.Halves.Count(half => half.Useful > 0) > 1;
            foreach (var half in piece.Halves)
            {
                Walk(half, next, separates ? next : separating, direction);
            }
        }
    }
}
