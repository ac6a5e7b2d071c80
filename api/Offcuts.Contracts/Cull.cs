namespace Offcuts.Contracts;

/// <summary>What of the stock the shop may let go. Nothing is changed by asking.</summary>
/// <param name="Items">The boards: those with most reasons first, then those worth least for their space, then the oldest.</param>
/// <param name="VolumeM3">The space that all of them take, in cubic metres of wood.</param>
/// <param name="Worth">What they are worth to the shop, by the rates of plans.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Suggested">How many rows of boards there are in all, with those that were not asked for.</param>
/// <param name="Designs">How many saved designs the boards were tried against; without any nothing is said to fit none.</param>
/// <param name="Unreadable">References of saved designs that cannot be read any more, because a species is gone or the currency is another: what serves only them is not known.</param>
public sealed record CullRecord(
    IReadOnlyList<CullItem> Items, decimal VolumeM3, decimal Worth, string Currency, int Suggested, int Designs, IReadOnlyList<string> Unreadable);

/// <summary>A board that may go.</summary>
/// <param name="Board">The board.</param>
/// <param name="Quantity">How many alike no plan holds.</param>
/// <param name="Days">For how many days it has lain.</param>
/// <param name="VolumeM3">The space that these take, in cubic metres of wood.</param>
/// <param name="Worth">What they are worth to the shop.</param>
/// <param name="Reasons">Why it may go.</param>
public sealed record CullItem(BoardRecord Board, int Quantity, int Days, decimal VolumeM3, decimal Worth, IReadOnlyList<CullReasonRecord> Reasons);

/// <summary>Why a board may go.</summary>
/// <param name="Code"><c>breaks-rule</c>, <c>fits-nothing</c>, <c>old</c> or <c>place-full</c>.</param>
/// <param name="Text">The same in words, with sizes in the shop's unit.</param>
public sealed record CullReasonRecord(string Code, string Text);
