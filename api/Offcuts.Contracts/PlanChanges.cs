namespace Offcuts.Contracts;

/// <summary>What a plan does otherwise than the earlier one that it started from.</summary>
/// <param name="EarlierWoodCost">What the earlier plan spends on wood.</param>
/// <param name="EarlierTotalCost">All money of the earlier plan.</param>
/// <param name="EarlierCurrency">Currency of the earlier plan.</param>
/// <param name="Boards">Every board of either plan: those of the new plan in cutting order, then those that it does not use.</param>
/// <param name="Parts">The parts and panels that come from elsewhere, or of which there are more or fewer.</param>
/// <param name="Purchases">The wood of which more or less is bought.</param>
public sealed record ChangesRecord(
    decimal EarlierWoodCost,
    decimal EarlierTotalCost,
    string EarlierCurrency,
    IReadOnlyList<BoardChangeRecord> Boards,
    IReadOnlyList<PartChangeRecord> Parts,
    IReadOnlyList<PurchaseChangeRecord> Purchases);

/// <summary>What becomes of a board.</summary>
/// <param name="Change"><c>kept</c> (the same pieces at the same places), <c>recut</c>, <c>new</c> or <c>dropped</c>.</param>
/// <param name="BoardId">Id of the board in stock; null for a bought one.</param>
/// <param name="OfferId">Id of the offer it is bought from; null for one in stock.</param>
/// <param name="Number">Its number in the new plan; null if that does not use it.</param>
/// <param name="EarlierNumber">Its number in the earlier plan; null if that does not use it.</param>
/// <param name="Reasons">What has changed about the board and what was cut from it; empty if it is just that the new plan is better so.</param>
/// <param name="Text">The same in a sentence.</param>
public sealed record BoardChangeRecord(
    string Change, string? BoardId, string? OfferId, int? Number, int? EarlierNumber, IReadOnlyList<ChangeReasonRecord> Reasons, string Text);

/// <summary>What has changed.</summary>
/// <param name="Code">
/// <c>board-gone</c>, <c>board-fewer</c>, <c>board-changed</c>, <c>offer-gone</c>, <c>part-gone</c>, <c>part-fewer</c>, <c>part-changed</c> or <c>shop-changed</c>.
/// </param>
/// <param name="Name">The part or panel that it is about; null for the others.</param>
public sealed record ChangeReasonRecord(string Code, string? Name);

/// <summary>Where the pieces of a part or the strips of a panel come from in the two plans.</summary>
/// <param name="Name">Name of the part or panel.</param>
/// <param name="Earlier">Where they came from.</param>
/// <param name="Now">Where they come from.</param>
/// <param name="Text">The same in a sentence.</param>
public sealed record PartChangeRecord(string Name, IReadOnlyList<PieceSourceRecord> Earlier, IReadOnlyList<PieceSourceRecord> Now, string Text);

/// <summary>Pieces from one board, or from bought boards of one offer.</summary>
/// <param name="BoardId">Id of the board in stock; null for bought ones.</param>
/// <param name="OfferId">Id of the offer; null for a board in stock.</param>
/// <param name="Count">How many pieces, layers or strips.</param>
public sealed record PieceSourceRecord(string? BoardId, string? OfferId, int Count);

/// <summary>How much of one size of an offer the two plans buy.</summary>
/// <param name="OfferId">Id of the offer.</param>
/// <param name="Name">What the supplier calls it, and the supplier.</param>
/// <param name="Size">Size of the piece.</param>
/// <param name="EarlierCount">How many the earlier plan buys.</param>
/// <param name="Count">How many the new plan buys.</param>
public sealed record PurchaseChangeRecord(string OfferId, string Name, SizeRecord Size, int EarlierCount, int Count);
