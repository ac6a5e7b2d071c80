namespace Offcuts.Contracts;

/// <summary>What to buy for a plan, in the words of the counter and in the shop's unit of today. Money is in <paramref name="Currency"/>.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Design">What it is for.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Suppliers">One list for each supplier; last what may be bought anywhere.</param>
/// <param name="Total">All money.</param>
public sealed record ShoppingRecord(string Plan, PlanDesign Design, string Currency, IReadOnlyList<CounterList> Suppliers, decimal Total);

/// <summary>What to buy of one supplier.</summary>
/// <param name="Supplier">The supplier as paths name it; null for what may be bought anywhere.</param>
/// <param name="SupplierName">The supplier's name as written; null if it is not known.</param>
/// <param name="Wood">The wood by offer.</param>
/// <param name="Items">What is bought ready made.</param>
/// <param name="Goods">Price of wood and items.</param>
/// <param name="Delivery">What the supplier charges for bringing them.</param>
/// <param name="TopUp">What the order lacks of the supplier's minimum; it is paid all the same, so more can be had for it.</param>
/// <param name="Total">All that the supplier gets.</param>
public sealed record CounterList(
    string? Supplier,
    string? SupplierName,
    IReadOnlyList<CounterWood> Wood,
    IReadOnlyList<ItemRecord> Items,
    decimal Goods,
    decimal Delivery,
    decimal TopUp,
    decimal Total);

/// <summary>The wood of one offer.</summary>
/// <param name="OfferId">Id of the offer.</param>
/// <param name="ListedAs">What the supplier calls it.</param>
/// <param name="Species">Species id.</param>
/// <param name="Text">What to ask for: thickness (in quarters for rough wood), surface and species.</param>
/// <param name="Quantity">How much of it, as it is counted: board feet, cubic metres, feet, metres or pieces.</param>
/// <param name="Rate">What one of these costs.</param>
/// <param name="BoardFeet">Volume in board feet; null for sheets.</param>
/// <param name="Pieces">The sizes to look for.</param>
/// <param name="Advice">What to mind when choosing; null if nothing.</param>
/// <param name="Cost">Price of all of it.</param>
public sealed record CounterWood(
    string OfferId,
    string? ListedAs,
    string Species,
    string Text,
    string Quantity,
    string Rate,
    decimal? BoardFeet,
    IReadOnlyList<CounterPieces> Pieces,
    string? Advice,
    decimal Cost);

/// <summary>Pieces of one size.</summary>
/// <param name="Count">How many.</param>
/// <param name="Text">How many of which width and length, in words.</param>
/// <param name="Size">Their size.</param>
/// <param name="UnitPrice">Price of one.</param>
/// <param name="Cost">Price of all.</param>
public sealed record CounterPieces(int Count, string Text, SizeRecord Size, decimal UnitPrice, decimal Cost);
