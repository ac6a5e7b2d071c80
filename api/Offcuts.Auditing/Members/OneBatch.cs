using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// All boards that give pieces of a finish group which asks for one batch are of it: boards in stock that name the same, or boards bought of one
/// offer. A board in stock that names none is of none.
/// </summary>
internal static class OneBatch
{
    /// <summary>A batch: its name in stock, or the offer.</summary>
    public sealed record Origin(string? Named, string? Offer);

    public static void Check(AuditScope scope)
    {
        foreach (var group in scope.Problem.Design.Groups.Where(group => group.Batch == BatchChoice.One))
        {
            var origins = OfGroup(scope, group.Name);
            scope.Findings.Require(
                origins.Count <= 1, AuditRule.Batch, $"Group {group.Name} is of several batches: {string.Join(", ", origins)}.");
            scope.Findings.Require(
                !origins.Contains(new Origin(null, null)), AuditRule.Batch, $"Group {group.Name} is partly from boards of no batch.");
        }
    }

    /// <summary>The batches from which the plan makes members of a group.</summary>
    public static List<Origin> OfGroup(AuditScope scope, string group) =>
        [.. scope.Cuts.Where(cut => cut.Board.Pieces.Any(piece => IsOf(scope, piece, group))).Select(Of).Distinct()];

    /// <summary>The batches that there are.</summary>
    public static IEnumerable<Origin> All(PlanningProblem problem) =>
        problem.Stock.Where(board => board.Batch is not null).Select(board => new Origin(board.Batch, null))
            .Concat(problem.Offers.Select(offer => new Origin(null, offer.Id))).Distinct();

    private static Origin Of(SourcedCut cut) => new(cut.Stock?.Batch, cut.Offer?.Offer.Id);

    private static bool IsOf(AuditScope scope, Piece piece, string group) => piece switch
    {
        PartPiece part => scope.Parts.TryGetValue(part.Part, out var known) && known.Group == group,
        StripPiece strip => scope.Panels.TryGetValue(strip.Panel, out var known) && known.Group == group,
        _ => false,
    };
}
