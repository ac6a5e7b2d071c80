namespace Offcuts.Contracts;

/// <summary>How well a build used its wood, as far as its boards are cut.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="Design">The design as it was.</param>
/// <param name="State"><c>accepted</c>, <c>under-way</c>, <c>built</c> or <c>stopped</c>.</param>
/// <param name="AcceptedAt">When it was accepted (UTC).</param>
/// <param name="ConsumedM3">The boards less what went back to the rack, in cubic metres.</param>
/// <param name="PartsM3">Blanks of parts and strips of panels, as sawn.</param>
/// <param name="Yield">Parts of the wood consumed; null while nothing is cut.</param>
/// <param name="RackShare">The share of the parts that came from boards which the shop had; null while there are none.</param>
/// <param name="NotSpent">What as much wood as these would have cost to buy, by the rates with which the plan was made.</param>
/// <param name="Spent">What the boards cost that were bought for it.</param>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record BuildYieldRecord(
    string PlanId,
    PlanDesign Design,
    string State,
    DateTimeOffset AcceptedAt,
    decimal ConsumedM3,
    decimal PartsM3,
    decimal? Yield,
    decimal? RackShare,
    decimal NotSpent,
    decimal Spent,
    string Currency);

/// <summary>The yield of each build.</summary>
/// <param name="Items">The builds, newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record BuildYieldPage(IReadOnlyList<BuildYieldRecord> Items, string? Next);

/// <summary>What lay on the rack, day by day.</summary>
/// <param name="Items">The days on which it changed, oldest first.</param>
public sealed record PileRecord(IReadOnlyList<PilePointRecord> Items);

/// <summary>What lay on the rack at the end of a day (UTC), free or held by plans.</summary>
/// <param name="Day">The day.</param>
/// <param name="Boards">How many boards and sheets.</param>
/// <param name="VolumeM3">Their wood in cubic metres.</param>
public sealed record PilePointRecord(DateOnly Day, int Boards, decimal VolumeM3);
