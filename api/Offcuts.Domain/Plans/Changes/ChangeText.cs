namespace Offcuts.Domain;

/// <summary>What has changed from one plan to the next, in words that hold no sizes, so that they can be read in any unit.</summary>
/// <param name="earlier">What the earlier plan was made from.</param>
/// <param name="problem">What the new plan was made from.</param>
public sealed class ChangeText(PlanningProblem earlier, PlanningProblem problem)
{
    private readonly Dictionary<string, Offer> offers = problem.Offers.Concat(earlier.Offers).DistinctBy(offer => offer.Id)
        .ToDictionary(offer => offer.Id, StringComparer.Ordinal);

    /// <summary>What becomes of a board, and why where something about it has changed.</summary>
    public string Of(BoardChange change)
    {
        var board = change.Board.BoardId is { } id ? $"Board {id}" : $"A bought board, {NameOf(change.Board.OfferId!)},";
        var what = change.Kind switch
        {
            BoardChangeKind.Kept => "is cut as before",
            BoardChangeKind.Recut => "is cut otherwise",
            BoardChangeKind.New => "is used now",
            BoardChangeKind.Dropped => "is not used any more",
        };
        return change.Reasons.Count == 0 ? $"{board} {what}." : $"{board} {what}: {string.Join("; ", change.Reasons.Select(Of))}.";
    }

    /// <summary>Where the pieces of a part come from, and where they came from.</summary>
    public string Of(PartChange change) => (change.Earlier.Count, change.Now.Count) switch
    {
        (0, _) => $"{change.Name} is new: {From(change.Now)}.",
        (_, 0) => $"{change.Name} is not cut any more; before {From(change.Earlier)}.",
        _ => $"{change.Name}: {From(change.Now)}; before {From(change.Earlier)}.",
    };

    /// <summary>An offer as people know it, also one that there is no more.</summary>
    public string NameOf(string offerId) => offers.TryGetValue(offerId, out var offer) ? $"{offer.Name ?? offer.Id} from {offer.SupplierName ?? offer.Supplier}" : offerId;

    private static string Of(ChangeReason reason) => reason.Kind switch
    {
        ChangeReasonKind.BoardGone => "it is not among the boards that may be cut",
        ChangeReasonKind.BoardChanged => "it is recorded otherwise now",
        ChangeReasonKind.OfferGone => "it is not on offer any more",
        ChangeReasonKind.PartGone => $"{reason.Part} is not wanted any more",
        ChangeReasonKind.PartFewer => $"fewer of {reason.Part} are wanted",
        ChangeReasonKind.PartChanged => $"{reason.Part} is described otherwise now",
        ChangeReasonKind.ShopChanged => "the shop's settings have changed",
    };

    private string From(IReadOnlyList<PieceSource> sources) => string.Join(", ", sources.Select(source => source.BoardId is { } id
        ? FormattableString.Invariant($"{source.Count} from {id}")
        : FormattableString.Invariant($"{source.Count} from what is bought as {NameOf(source.OfferId!)}")));
}
