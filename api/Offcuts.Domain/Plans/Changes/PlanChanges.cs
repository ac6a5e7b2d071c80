namespace Offcuts.Domain;

/// <summary>What a plan does otherwise than an earlier one.</summary>
/// <param name="EarlierWoodCost">What the earlier plan spends on wood, in its own currency.</param>
/// <param name="EarlierItemCost">What the earlier plan spends on items, in its own currency.</param>
/// <param name="EarlierChargeCost">What suppliers charge beyond that for the earlier plan, in its own currency.</param>
/// <param name="EarlierCurrency">Currency of the earlier plan.</param>
/// <param name="Boards">Every board of either plan: those of the new plan in its order, then those that it does not use.</param>
/// <param name="Parts">The parts and panels that come from elsewhere, or of which there are more or fewer.</param>
/// <param name="Purchases">The wood of which more or less is bought.</param>
public sealed record PlanChanges(
    Money EarlierWoodCost,
    Money EarlierItemCost,
    Money EarlierChargeCost,
    string EarlierCurrency,
    IReadOnlyList<BoardChange> Boards,
    IReadOnlyList<PartChange> Parts,
    IReadOnlyList<PurchaseChange> Purchases);

/// <summary>What becomes of a board from one plan to the next.</summary>
/// <param name="Kind">What.</param>
/// <param name="Board">The board as the new plan cuts it; as the earlier one does if the new one does not use it.</param>
/// <param name="EarlierNumber">Its number in the earlier plan; null for a board that only the new one uses.</param>
/// <param name="Reasons">What has changed about the board and what was cut from it; none if it is just that the new plan is better so.</param>
public sealed record BoardChange(BoardChangeKind Kind, BoardCut Board, int? EarlierNumber, IReadOnlyList<ChangeReason> Reasons);

/// <summary>What becomes of a board from one plan to the next.</summary>
public enum BoardChangeKind
{
    /// <summary>The same pieces are cut from it at the same places; they may be numbered otherwise.</summary>
    Kept,

    /// <summary>Both plans use it, but cut it otherwise.</summary>
    Recut,

    /// <summary>Only the new plan uses it.</summary>
    New,

    /// <summary>Only the earlier plan uses it.</summary>
    Dropped,
}

/// <summary>What has changed, so that a board cannot be cut, or need not be, as it was.</summary>
/// <param name="Kind">What.</param>
/// <param name="Part">The part or panel that it is about; null for the others.</param>
public sealed record ChangeReason(ChangeReasonKind Kind, string? Part = null);

/// <summary>What has changed from one plan's problem to the next one's.</summary>
public enum ChangeReasonKind
{
    /// <summary>The board is not among those that may be cut.</summary>
    BoardGone,

    /// <summary>Of several boards alike fewer may be cut: the others are held, used or gone.</summary>
    BoardFewer,

    /// <summary>The board is recorded otherwise: its size, its condition, what it is.</summary>
    BoardChanged,

    /// <summary>The wood is not offered any more in this size.</summary>
    OfferGone,

    /// <summary>The part or panel is not in the design any more.</summary>
    PartGone,

    /// <summary>The design asks for fewer of it.</summary>
    PartFewer,

    /// <summary>It is described otherwise.</summary>
    PartChanged,

    /// <summary>The shop works otherwise: kerf, allowances, machines, what is kept.</summary>
    ShopChanged,
}

/// <summary>Where the pieces of a part, or the strips of a panel, come from in the two plans.</summary>
/// <param name="Name">Name of the part or panel.</param>
/// <param name="Earlier">Where they came from.</param>
/// <param name="Now">Where they come from.</param>
public sealed record PartChange(string Name, IReadOnlyList<PieceSource> Earlier, IReadOnlyList<PieceSource> Now);

/// <summary>Pieces from one board, or from bought boards of one offer. Extra pieces do not count.</summary>
/// <param name="BoardId">Id of the board in stock; null for bought ones.</param>
/// <param name="OfferId">Id of the offer; null for a board in stock.</param>
/// <param name="Count">How many pieces, layers or strips.</param>
public sealed record PieceSource(string? BoardId, string? OfferId, int Count);

/// <summary>How much of one size of an offer the two plans buy.</summary>
/// <param name="Offer">The offer and size, with its present price; with the earlier one where it is not bought any more.</param>
/// <param name="Earlier">How many the earlier plan buys.</param>
/// <param name="Now">How many the new plan buys.</param>
public sealed record PurchaseChange(OfferSize Offer, int Earlier, int Now);
