using Offcuts.Domain;

namespace Offcuts.Planning.Layout;

/// <summary>Counts the pieces of parts for which the design leaves it open how many there are.</summary>
internal static class PartCounts
{
    public static List<PartCount> Of(PlanningProblem problem, IReadOnlyList<BoardCut> boards, IReadOnlyList<MissingPart> missing) =>
        [.. problem.Design.Parts.Where(part => part.HasCount).Select(part => Of(part, boards, missing.Any(lacking => lacking.Name == part.Name)))];

    private static PartCount Of(Part part, IReadOnlyList<BoardCut> boards, bool isMissing)
    {
        // The layers of one copy count once.
        var pieces = boards.SelectMany(board => board.Pieces).OfType<PartPiece>().Where(piece => piece.Part == part.Name)
            .SelectMany(piece => piece.Copies.Select(copy => (IsSpare: piece.Use == PieceUse.Spare, copy.Copy, (piece.Finished ?? part.Finished).Width)))
            .DistinctBy(made => (made.IsSpare, made.Copy)).ToLookup(made => made.IsSpare);
        var count = pieces[false].Count();
        var widths = pieces[false].Aggregate(Length.Zero, (sum, made) => sum + made.Width);
        return new PartCount(
            part.Name, count, pieces[true].Count(),
            part.Spacing is { } spacing && !isMissing ? new EqualGaps(spacing.Span - widths, spacing.Gaps(count)) : null);
    }
}
