using System.Globalization;

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

    /// <summary>Of which plan all this is told.</summary>
    /// <param name="planId">Id of the earlier plan.</param>
    public static string Heading(string planId) => $"Changed since plan {planId}";

    /// <summary>What it costs, beside what it cost.</summary>
    /// <param name="before">The money with its currency.</param>
    /// <param name="now">Likewise.</param>
    public static string Cost(string before, string now) => before == now ? "It costs as much as before." : $"It costs {now} instead of {before}.";

    /// <summary>Which boards are cut as before.</summary>
    /// <param name="kept">Their numbers in the new plan.</param>
    /// <param name="boards">How many boards that has.</param>
    public static string Kept(IReadOnlyList<int> kept, int boards) => kept.Count == 0 ? "No board is cut as before."
        : kept.Count == boards ? "All its boards are cut as before."
        : $"Cut as before: {string.Join(", ", kept.Select(number => number.ToString(CultureInfo.InvariantCulture)))}.";

    /// <summary>What becomes of a board, behind its number.</summary>
    /// <param name="number">Its number in the new plan; null if that does not use it.</param>
    /// <param name="text">What <see cref="Of(BoardChange)"/> says of it.</param>
    public static string Numbered(int? number, string text) => number is { } known ? FormattableString.Invariant($"{known}. {text}") : text;

    /// <summary>How much is bought, beside how much was.</summary>
    /// <param name="now">How many.</param>
    /// <param name="before">How many were.</param>
    /// <param name="name">What <see cref="NameOf"/> calls it.</param>
    /// <param name="size">Its size.</param>
    public static string Bought(int now, int before, string name, string size) => FormattableString.Invariant($"Buy {now} instead of {before} of {name}, {size}.");

    /// <summary>An offer as people know it, also one that there is no more.</summary>
    public string NameOf(string offerId) => offers.TryGetValue(offerId, out var offer) ? $"{offer.Name ?? offer.Id} from {offer.SupplierName ?? offer.Supplier}" : offerId;

    private static string Of(ChangeReason reason) => reason.Kind switch
    {
        ChangeReasonKind.BoardGone => "it is not among the boards that may be cut",
        ChangeReasonKind.BoardFewer => "fewer of it may be cut now",
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
