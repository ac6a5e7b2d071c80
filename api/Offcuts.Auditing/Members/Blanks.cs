using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>Rule 2: a blank is exactly the finished size and the allowances of its board's kind, across the board also what its crook takes, turned as a whole and only if the grain is free.</summary>
internal static class Blanks
{
    public static void Check(AuditScope scope, SourcedCut cut, PartPiece piece)
    {
        if (!scope.Parts.TryGetValue(piece.Part, out var part))
        {
            scope.Findings.Add(AuditRule.Demand, $"Board {cut.Board.Number}: the design has no part {piece.Part}.");
            return;
        }

        var allowances = Milling.Allowances(scope.Problem.Shop, cut.Board.Kind, cut.Board.Surface);
        var along = part.Finished.Length + allowances.Length;
        var across = part.Finished.Width + allowances.Width;
        var length = piece.Turned ? across : along;
        var width = (piece.Turned ? along : across) + Warping.Of(cut).Edge(length);
        scope.Findings.Require(
            piece.At.Length == length && piece.At.Width == width,
            AuditRule.BlankSize, $"Board {cut.Board.Number}: the blank of {part.Name} must be {length} by {width}, it is {piece.At.Length} by {piece.At.Width}.");
        scope.Findings.Require(
            !piece.Turned || part.Grain == Grain.Free, AuditRule.BlankSize, $"Board {cut.Board.Number}: {part.Name} may not be turned.");
        Serving.Check(scope, cut, piece, part.Name, part.Species, part.Appearance, part.Finished.Thickness, piece.Turned ? across : width);
    }
}
