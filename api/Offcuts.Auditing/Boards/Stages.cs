using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// How often the direction of cutting turns on the way from a board to a blank or strip. The first stage is in the board's first direction.
/// The last cut that separates the piece from another blank or strip belongs at the latest to stage three (two without
/// <see cref="Shop.Recut"/>); the cuts behind it only trim the piece, in one more stage at most.
/// Cuts before the first that separates two blanks or strips are not counted: they free the board's clear part from its ends, edges and defects.
/// A board with defects may first be divided along their edges as often as it takes; each area that this frees has its stages for itself, and its
/// own first direction.
/// Where several builds are planned together, what the pieces of one leave of a board may be cut by the others with stages of its own.
/// Extra pieces do not count in this: each rectangle in which only they lie has stages of its own, as many, beginning in either direction.
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

        var most = scope.Problem.Shop.Recut ? 3 : 2;
        var defects = cut.DefectAreas.ToList();
        FirstCut[] either = [FirstCut.Crosscut, FirstCut.Rip];
        FirstCut[] own = defects.Count == 0 ? [cut.Board.FirstCut] : either;
        if (!InTurn(whole, scope.Problem.Builds, own))
        {
            Report(whole, IsAsked, own);
        }

        foreach (var piece in OfExtras(whole))
        {
            Report(piece, IsExtra, either);
        }

        // Of several builds each may cut up what one before it left, as if that were a board of its own.
        bool InTurn(SawnPiece piece, IReadOnlyList<string> builds, FirstCut[] firsts) => Faults(piece, IsAsked, firsts, most, defects).Count == 0
            || (builds.Count > 1 && builds.Any(first => Faults(piece, asked => IsOf(asked, first), firsts, most, defects).Count == 0
                && Without(piece, asked => IsOf(asked, first)).All(rest => InTurn(rest, [.. builds.Where(build => build != first)], either))));

        void Report(SawnPiece piece, Predicate<Piece> isWanted, FirstCut[] firsts)
        {
            foreach (var (blank, stage, separating) in Faults(piece, isWanted, firsts, most, defects))
            {
                scope.Findings.Add(
                    AuditRule.Stages,
                    $"Board {cut.Board.Number}: the piece at {blank.At} is separated at stage {separating} and free at stage {stage}; {most} and trimming are allowed.");
            }
        }
    }

    /// <summary>The pieces that take too many stages, with what defects allow.</summary>
    private static List<(SawnPiece Piece, int Stage, int Separating)> Faults(SawnPiece piece, Predicate<Piece> isWanted, FirstCut[] firsts, int most, List<Rect> defects)
    {
        var area = Divided(piece, isWanted);
        var faults = firsts.Select(first => Faults(area, isWanted, first, most)).ToList();
        return area.Count(isWanted) == 0 || faults.Exists(each => each.Count == 0) ? []
            : IsAlongDefect(area, defects) ? [.. area.Halves.SelectMany(half => Faults(half, isWanted, firsts, most, defects))]
            : faults[0];
    }

    private static bool IsOf(Piece piece, string build) => IsAsked(piece) && JointDesign.IsOf(piece is PartPiece part ? part.Part : ((StripPiece)piece).Panel, build);

    private static bool IsAsked(Piece piece) => piece is StripPiece or PartPiece { Use: PieceUse.Asked };

    private static bool IsExtra(Piece piece) => piece is PartPiece { Use: not PieceUse.Asked };

    /// <summary>The largest rectangles in which nothing that is asked for lies.</summary>
    private static IEnumerable<SawnPiece> OfExtras(SawnPiece piece) => Without(piece, IsAsked);

    /// <summary>The largest rectangles in which nothing of a kind lies.</summary>
    private static IEnumerable<SawnPiece> Without(SawnPiece piece, Predicate<Piece> isWanted) =>
        piece.Count(isWanted) == 0 ? [piece] : piece.Halves.SelectMany(half => Without(half, isWanted));

    /// <summary>Whether the cut begins or ends where a defect does: the blade runs in the defect, or next to it where the defect is narrower.</summary>
    private static bool IsAlongDefect(SawnPiece piece, List<Rect> defects) => piece.Direction is { } direction && defects.Exists(defect =>
    {
        var (low, high) = direction == FirstCut.Crosscut ? (defect.X, defect.Right) : (defect.Y, defect.Top);
        return piece.Blade.From == low || piece.Blade.To == high;
    });

    /// <summary>What the cuts leave that only free it: the first piece that a cut separates into several with blanks or strips, or the only one.</summary>
    private static SawnPiece Divided(SawnPiece piece, Predicate<Piece> isWanted)
    {
        while (piece.Halves.Count > 0 && piece.Halves.Count(half => half.Count(isWanted) > 0) < 2)
        {
            piece = piece.Halves.FirstOrDefault(half => half.Count(isWanted) > 0) ?? piece.Halves[0];
        }

        return piece;
    }

    /// <summary>The pieces that take too many stages if the first goes in a direction.</summary>
    private static List<(SawnPiece Piece, int Stage, int Separating)> Faults(SawnPiece area, Predicate<Piece> isWanted, FirstCut first, int most)
    {
        var faults = new List<(SawnPiece, int, int)>();
        Walk(area, 0, 0, first == FirstCut.Crosscut ? FirstCut.Rip : FirstCut.Crosscut);
        return faults;

        void Walk(SawnPiece piece, int stage, int separating, FirstCut last)
        {
            if (piece.Count(isWanted) == 0)
            {
                return;
            }

            if (piece.Direction is not { } direction)
            {
                if (separating > most || stage > most + 1)
                {
                    faults.Add((piece, stage, separating));
                }

                return;
            }

            // Before the first cut the stage is 0, so a board that is not cut in its first direction begins with stage 2.
            var next = stage == 0 ? (direction == first ? 1 : 2) : direction == last ? stage : stage + 1;
            var separates = piece.Halves.Count(half => half.Count(isWanted) > 0) > 1;
            foreach (var half in piece.Halves)
            {
                Walk(half, next, separates ? next : separating, direction);
            }
        }
    }
}
