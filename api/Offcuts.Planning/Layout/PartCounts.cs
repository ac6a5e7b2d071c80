using Offcuts.Domain;

namespace Offcuts.Planning.Layout;

/// <summary>Counts the pieces of parts for which the design leaves it open how many there are.</summary>
internal static class PartCounts
{
    public static List<PartCount> Of(PlanningProblem problem, IReadOnlyList<BoardCut> boards, IReadOnlyList<MissingPart> missing) =>
        [.. problem.Design.Parts.Where(part => part.HasCount).Select(part => Of(part, boards, missing.Any(lacking => lacking.Name == part.Name)))];

    private static PartCount Of(Part part, IReadOnlyList<BoardCut> boards, bool isMissing)
    {
        var pieces = boards.SelectMany(board => board.Pieces).OfType<PartPiece>().Where(piece => piece.Part == part.Name).ToLookup(piece => piece.Use == PieceUse.Spare);
        var count = pieces[false].Count();
        var widths = pieces[false].Aggregate(Length.Zero, (sum, piece) => sum + (piece.Finished ?? part.Finished).Width);
        return new PartCount(
            part.Name, count, pieces[true].Count(),
            part.Spacing is { } spacing && !isMissing ? new EqualGaps(spacing.Span - widths, spacing.Gaps(count)) : null);
    }
}
