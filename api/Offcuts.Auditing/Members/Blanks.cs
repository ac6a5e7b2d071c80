using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 2: a blank is exactly the finished size (where the part has tolerances, the planned one; of all its pieces in a row) and the allowances of its
/// board's kind, across the board also what its crook takes, turned as a whole and only if the grain is free.
/// </summary>
internal static class Blanks
{
    public static void Check(AuditScope scope, SourcedCut cut, PartPiece piece)
    {
        if (!scope.Parts.TryGetValue(piece.Part, out var part))
        {
            scope.Findings.Add(AuditRule.Demand, $"Board {cut.Board.Number}: the design has no part {piece.Part}.");
            return;
        }

        if (!Recipes.IsSound(piece))
        {
            scope.Findings.Add(AuditRule.Recipe, $"Board {cut.Board.Number}: the blank of {part.Name} has the recipe {piece.Recipe}.");
            return;
        }

        var finished = Finished(scope, cut, part, piece);
        var allowances = Milling.Allowances(scope.Problem.Shop, cut.Board.Kind, cut.Board.Surface);
        var along = Recipes.LengthOf(scope, cut, part, finished.Length, piece);
        var across = finished.Width + allowances.Width;
        var length = piece.Turned ? across : along;
        var width = (piece.Turned ? along : across) + Warping.Of(cut).Edge(length);
        scope.Findings.Require(
            piece.At.Length == length && piece.At.Width == width,
            AuditRule.BlankSize, $"Board {cut.Board.Number}: the blank of {part.Name} must be {length} by {width}, it is {piece.At.Length} by {piece.At.Width}.");
        scope.Findings.Require(
            !piece.Turned || part.Grain == Grain.Free, AuditRule.BlankSize, $"Board {cut.Board.Number}: {part.Name} may not be turned.");
        Recipes.Check(scope, cut, part, piece);
        Serving.Check(scope, cut, piece, Recipes.Asked(part, piece), piece.Turned ? across : width);
        scope.Findings.Require(
            piece.Recipe.Layers == 1 || across <= scope.Problem.Shop.PlanerWidth,
            AuditRule.MachineWidth, $"Board {cut.Board.Number}: {part.Name}, glued up {across} wide, is too wide for the planer.");
    }

    /// <summary>
    /// The size to finish a piece to: the part's own, or with tolerances the one that the plan says, which must lie within them. Faces that need no
    /// planing give the board's thickness; others at most what planing leaves.
    /// </summary>
    private static Dimensions Finished(AuditScope scope, SourcedCut cut, Part part, PartPiece piece)
    {
        if (part.Most is not { } most || !part.HasTolerance || piece.Finished is not { } finished)
        {
            scope.Findings.Require(
                piece.Finished is null != part.HasTolerance || piece.Finished == part.Finished, AuditRule.FinishedSize,
                $"Board {cut.Board.Number}: {part.Name} is finished to {piece.Finished}, the design says {part.Finished} to {part.Most}.");
            return part.Finished;
        }

        var least = part.Finished;
        scope.Findings.Require(
            least.Thickness <= finished.Thickness && finished.Thickness <= most.Thickness && least.Width <= finished.Width && finished.Width <= most.Width
                && least.Length <= finished.Length && finished.Length <= most.Length,
            AuditRule.FinishedSize, $"Board {cut.Board.Number}: {part.Name} is finished to {finished}, the design allows {least} to {most}.");
        var board = cut.Board;
        scope.Findings.Require(
            Milling.IsUsedAsItIs(board.Kind, board.Surface, board.Size.Thickness, least.Thickness, most.Thickness)
                ? finished.Thickness == board.Size.Thickness
                : finished.Thickness + Milling.Allowances(scope.Problem.Shop, board.Kind, board.Surface).Thickness + (piece.Loss?.Thickness ?? Length.Zero)
                    <= board.Size.Thickness,
            AuditRule.FinishedSize, $"Board {board.Number}, {board.Size.Thickness} thick, does not give {part.Name} the thickness {finished.Thickness}.");
        return finished;
    }
}
