using Offcuts.Auditing.Boards;
using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 12: more pieces than the fewest, and spares, are no more than the design can use, come from boards that are cut for something else,
/// and only where the design lets them from what would have been a leftover; and the plan counts them rightly.
/// </summary>
internal static class Extras
{
    public static void Check(AuditScope scope, Part part, List<int> more, List<int> spares)
    {
        var most = (part.MostQuantity ?? part.Quantity) - part.Quantity;
        scope.Findings.Require(
            more.Count <= most && (more.Count == 0 || scope.Plan.Missing.All(missing => missing.Name != part.Name)),
            AuditRule.Extras, $"{more.Count} more of {part.Name} are made, the design can use {most}.");
        scope.Findings.Require(
            spares.Count <= part.Spares && spares.Order().SequenceEqual(Enumerable.Range(1, spares.Count)),
            AuditRule.Extras, $"The spares of {part.Name} are numbered {string.Join(", ", spares)}, the design asks for {part.Spares}.");
        CheckCount(scope, part);
    }

    /// <summary>The extra pieces of one board.</summary>
    public static void Check(AuditScope scope, SourcedCut cut)
    {
        var extras = cut.Board.Pieces.OfType<PartPiece>().Where(piece => piece.Use != PieceUse.Asked).ToList();
        scope.Findings.Require(
            extras.Count == 0 || cut.Board.Pieces.Any(piece => piece is StripPiece or PartPiece { Use: PieceUse.Asked }),
            AuditRule.Extras, $"Board {cut.Board.Number} is cut for nothing that the design asks for.");
        foreach (var piece in extras)
        {
            // A blank that would be kept itself, even before it grew within its tolerances, must have been part of a leftover.
            scope.Findings.Require(
                !scope.Parts.TryGetValue(piece.Part, out var part) || part.MayUseLeftovers(piece.Use)
                    || !Keeping.IsKept(scope.Problem.Shop, cut.Board.Species, Least(part, piece, cut.Board.Size.Thickness)),
                AuditRule.Extras, $"Board {cut.Board.Number}: an extra {piece.Part} at {piece.At} is cut from what would be a leftover.");
        }
    }

    private static Dimensions Least(Part part, PartPiece piece, Length thickness)
    {
        var wider = (piece.Finished ?? part.Finished).Width - part.Finished.Width;
        var longer = (piece.Finished ?? part.Finished).Length - part.Finished.Length;
        return piece.Turned
            ? new(thickness, piece.At.Width - longer, piece.At.Length - wider)
            : new(thickness, piece.At.Width - wider, piece.At.Length - longer);
    }

    private static void CheckCount(AuditScope scope, Part part)
    {
        var counts = scope.Plan.Counts.Where(count => count.Part == part.Name).ToList();
        scope.Findings.Require(
            counts.Count == (part.HasCount ? 1 : 0), AuditRule.Counts, $"{part.Name} is counted {counts.Count} times.");
        var pieces = scope.Plan.Boards.SelectMany(board => board.Pieces).OfType<PartPiece>().Where(piece => piece.Part == part.Name).ToList();
        var copies = Demand.Copies(pieces.Select(piece => piece with { Finished = piece.Finished ?? part.Finished })).ToList();
        var widths = copies.Where(copy => copy.Use != PieceUse.Spare).Aggregate(Int128.Zero, (sum, copy) => sum + copy.Width.Ticks);
        foreach (var count in counts)
        {
            var spares = copies.Count(copy => copy.Use == PieceUse.Spare);
            scope.Findings.Require(
                count.Spares == spares && count.Count == copies.Count - spares,
                AuditRule.Counts, $"{count.Count} of {part.Name} and {count.Spares} spares are counted, {copies.Count - spares} and {spares} are made.");
            var hasGaps = part.Spacing is not null && scope.Plan.Missing.All(missing => missing.Name != part.Name);
            scope.Findings.Require(
                hasGaps ? count.Gaps is { } gaps && IsRight(gaps, part.Spacing!, copies.Count - spares, widths) : count.Gaps is null,
                AuditRule.Counts, $"The gaps between the pieces of {part.Name}, {count.Gaps}, do not follow from their widths, {widths} ticks in {part.Spacing?.Span}.");
        }
    }

    /// <summary>Gaps and pieces fill the span: n pieces leave n + 1 gaps with gaps at both ends, else n - 1.</summary>
    private static bool IsRight(EqualGaps gaps, Spacing spacing, int pieces, Int128 widths) =>
        gaps.Number == (spacing.Ends ? pieces + 1 : pieces - 1) && gaps.Total >= Length.Zero && gaps.Total.Ticks + widths == spacing.Span.Ticks;
}
