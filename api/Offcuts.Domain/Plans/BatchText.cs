namespace Offcuts.Domain;

/// <summary>What each batch has of the wood of a finish group that must be of one, in words.</summary>
internal static class BatchText
{
    private const int MostNamed = 6;

    /// <summary>Why more wood of any batch does not help, to follow the reason: which batches there are and how much of each.</summary>
    /// <param name="group">The finish group.</param>
    /// <param name="species">What the part or panel accepts.</param>
    /// <param name="problem">What was planned.</param>
    public static string NoneIsEnough(FinishGroup group, IReadOnlyList<string> species, PlanningProblem problem)
    {
        var batches = Batches(species, problem);
        var more = batches.Count > MostNamed ? FormattableString.Invariant($" and {batches.Count - MostNamed} more") : "";
        var named = batches.Count > 0 ? $" ({string.Join("; ", batches.Take(MostNamed))}{more})" : "";
        return $": the finish group {group.Name} is to be of one batch, and no batch was found to give enough{named}. "
            + "More of the same batch helps; wood of another only if there is enough of it for the whole group";
    }

    private static List<string> Batches(IReadOnlyList<string> species, PlanningProblem problem) =>
    [
        .. problem.Stock.Where(board => board.Batch is not null && species.Contains(board.Species)).GroupBy(board => board.Batch!, StringComparer.Ordinal)
            .Select(batch => (Name: batch.Key, Count: batch.Sum(board => board.Quantity), Feet: batch.Sum(board => BoardMeasure.BoardFeet(board.Size) * board.Quantity)))
            .OrderByDescending(batch => batch.Feet).ThenBy(batch => batch.Name, StringComparer.Ordinal)
            .Select(batch => $"batch {batch.Name}: {Boards(batch.Count)}, {VolumeText.Format(batch.Feet, problem.Shop.Unit)}"),
        .. problem.Offers.Where(offer => offer.Available is not null and not 0 && species.Contains(offer.Species))
            .Select(offer => $"{offer.Name ?? offer.Id} from {offer.SupplierName ?? offer.Supplier}: {Boards(offer.Available!.Value)} to be had"),
    ];

    private static string Boards(long count) => FormattableString.Invariant($"{count} {(count == 1 ? "board" : "boards")}");
}
