using Offcuts.Domain;

namespace Offcuts.Auditing.Boards;

/// <summary>
/// Rule 6, the ends and edges: what the shop trims off checked and unknown ends of solid wood and off a sheet's factory edges is lost. No blank, strip
/// or kept leftover lies in it; and a leftover's ends are called what they are.
/// </summary>
internal static class EndTrims
{
    /// <summary>What is lost of a board: at the left end, at the right end, at each long edge.</summary>
    public static (Length Left, Length Right, Length Edge) Of(Shop shop, BoardKind kind, Surface surface, Ends ends)
    {
        if (kind == BoardKind.Sheet)
        {
            var trim = shop.FactoryEdgeTrim;
            return (
                ends.Left == EndState.Sound ? Length.Zero : trim,
                ends.Right == EndState.Sound ? Length.Zero : trim,
                ends is { Left: EndState.Sound, Right: EndState.Sound } ? Length.Zero : trim);
        }

        return (OfEnd(ends.Left), OfEnd(ends.Right), Length.Zero);

        Length OfEnd(EndState state) =>
            state == EndState.Checked ? shop.EndTrimChecked
            : state == EndState.Unknown && surface != Surface.Surfaced ? shop.EndTrimUnknown
            : Length.Zero;
    }

    /// <summary>The places on a board of the plan that are lost.</summary>
    public static IEnumerable<Rect> Areas(AuditScope scope, SourcedCut cut)
    {
        var face = cut.Face;
        var (left, right, edge) = Of(scope.Problem.Shop, cut.Board.Kind, cut.Board.Surface, cut.Stock?.Ends ?? default);
        Rect[] areas =
        [
            face with { Length = Length.Min(left, face.Length) },
            face with { X = Length.Larger(Length.Zero, face.Length - right), Length = Length.Min(right, face.Length) },
            face with { Width = Length.Min(edge, face.Width) },
            face with { Y = Length.Larger(Length.Zero, face.Width - edge), Width = Length.Min(edge, face.Width) },
        ];
        return areas.Where(Rects.HasArea);
    }

    public static void Check(AuditScope scope, SourcedCut cut)
    {
        var lost = Areas(scope, cut).ToList();
        foreach (var piece in cut.Board.Pieces.Where(piece => piece is not WastePiece && lost.Exists(piece.At.Overlaps)))
        {
            scope.Findings.Add(AuditRule.EndTrim, $"Board {cut.Board.Number}: {piece} lies in an end or edge that is trimmed off.");
        }

        var own = cut.Stock?.Ends ?? default;
        foreach (var leftover in cut.Board.Pieces.OfType<LeftoverPiece>())
        {
            var left = leftover.At.X == Length.Zero ? own.Left : EndState.Sound;
            var right = leftover.At.Right == cut.Face.Right ? own.Right : EndState.Sound;
            scope.Findings.Require(
                leftover.Ends.Left == left && leftover.Ends.Right == right,
                AuditRule.LeftoverEnds, $"Board {cut.Board.Number}: the ends of the leftover at {leftover.At} are {left} and {right}, not {leftover.Ends.Left} and {leftover.Ends.Right}.");
        }
    }
}
