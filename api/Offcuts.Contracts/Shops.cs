namespace Offcuts.Contracts;

/// <summary>The shop as it is entered; what is null takes its default. Lengths are decimal millimetres.</summary>
/// <param name="Unit"><c>inch</c> or <c>millimetre</c>: the unit in which sizes are shown.</param>
/// <param name="Currency">ISO 4217 code of all prices.</param>
/// <param name="KerfMm">Width of the saw's cut.</param>
/// <param name="Rough">What milling takes from rough stock.</param>
/// <param name="Surfaced">What milling takes from surfaced stock.</param>
/// <param name="Sheet">What cutting to size takes from sheets; their thickness is never changed.</param>
/// <param name="PanelOversizeMm">By how much a panel is glued up wider than finished.</param>
/// <param name="SeamAllowanceMm">What jointing the last seam between two surfaced sub-panels takes.</param>
/// <param name="PlanerWidthMm">The widest piece the planer takes.</param>
/// <param name="JointerWidthMm">The widest rough piece the jointer flattens.</param>
/// <param name="NarrowestStripMm">The narrowest strip to glue up, where a panel does not say.</param>
/// <param name="WidestStripMm">The widest strip to glue up, where a panel does not say.</param>
/// <param name="Keep">The smallest leftover worth keeping.</param>
/// <param name="ShortestAtPlanerMm">The shortest piece that is safe at the planer; the machine's manual decides.</param>
/// <param name="ShortestAtJointerMm">The shortest piece that is safe at the jointer; the machine's manual decides.</param>
/// <param name="Recut">Whether a strip may be cut once more to hold several blanks.</param>
/// <param name="SkipPlaned">What milling takes from skip-planed stock.</param>
/// <param name="FlatEnoughMm">How far out of flat a blank of surfaced stock already at its thickness may be.</param>
/// <param name="EndTrimCheckedMm">What comes off a checked end of solid wood, the cut included.</param>
/// <param name="EndTrimUnknownMm">What comes off an end of rough or skip-planed stock that nobody looked at.</param>
/// <param name="FactoryEdgeTrimMm">What comes off every edge of a sheet.</param>
/// <param name="ShortBlanks"><c>allow</c>, <c>warn</c> or <c>refuse</c> blanks that are shorter than is safe at the machines.</param>
/// <param name="ResawHeightMm">The widest blank that the resaw takes on edge; null if the shop does not resaw.</param>
/// <param name="ResawKerfMm">Width of the resaw's cut.</param>
/// <param name="ResawCleanupMm">What a resawn slice is sawn thicker than finished.</param>
/// <param name="HoldDays">For how many days an accepted plan of which nothing is cut holds its boards; null for as long as nobody releases them.</param>
/// <param name="EstimateMargin">By how much smaller than written a plan counts a side that was only estimated.</param>
/// <param name="WidePanelMm">The finished width from which a solid panel's movement is warned of.</param>
/// <param name="Climate">The air in which what the shop builds will live.</param>
/// <param name="ReadingDays">For how many days a moisture reading counts, 1 to 3650.</param>
/// <param name="SecondStop">What every supplier after the first must save to be worth the stop, in the shop's currency.</param>
public sealed record ShopEntry(
    string? Unit = null,
    string? Currency = null,
    decimal? KerfMm = null,
    AllowanceRecord? Rough = null,
    AllowanceRecord? Surfaced = null,
    AllowanceRecord? Sheet = null,
    decimal? PanelOversizeMm = null,
    decimal? SeamAllowanceMm = null,
    decimal? PlanerWidthMm = null,
    decimal? JointerWidthMm = null,
    decimal? NarrowestStripMm = null,
    decimal? WidestStripMm = null,
    SizeRecord? Keep = null,
    decimal? ShortestAtPlanerMm = null,
    decimal? ShortestAtJointerMm = null,
    bool? Recut = null,
    AllowanceRecord? SkipPlaned = null,
    decimal? FlatEnoughMm = null,
    decimal? EndTrimCheckedMm = null,
    decimal? EndTrimUnknownMm = null,
    decimal? FactoryEdgeTrimMm = null,
    string? ShortBlanks = null,
    decimal? ResawHeightMm = null,
    decimal? ResawKerfMm = null,
    decimal? ResawCleanupMm = null,
    int? HoldDays = null,
    AllowanceRecord? EstimateMargin = null,
    decimal? WidePanelMm = null,
    ClimateRecord? Climate = null,
    int? ReadingDays = null,
    decimal? SecondStop = null);

/// <summary>The shop with every value that counts; see <see cref="ShopEntry"/> for what each is.</summary>
public sealed record ShopRecord(
    string Unit,
    string Currency,
    decimal KerfMm,
    AllowanceRecord Rough,
    AllowanceRecord Surfaced,
    AllowanceRecord Sheet,
    decimal PanelOversizeMm,
    decimal SeamAllowanceMm,
    decimal PlanerWidthMm,
    decimal JointerWidthMm,
    decimal NarrowestStripMm,
    decimal WidestStripMm,
    SizeRecord Keep,
    decimal ShortestAtPlanerMm,
    decimal ShortestAtJointerMm,
    bool Recut,
    AllowanceRecord SkipPlaned,
    decimal FlatEnoughMm,
    decimal EndTrimCheckedMm,
    decimal EndTrimUnknownMm,
    decimal FactoryEdgeTrimMm,
    string ShortBlanks,
    decimal? ResawHeightMm,
    decimal ResawKerfMm,
    decimal ResawCleanupMm,
    AllowanceRecord EstimateMargin,
    decimal WidePanelMm,
    ClimateRecord Climate,
    int ReadingDays,
    int? HoldDays = null,
    decimal SecondStop = 0);

/// <summary>The air in which furniture lives over the year.</summary>
/// <param name="LowHumidityPercent">Relative humidity in the dry season, 5 to 95.</param>
/// <param name="HighHumidityPercent">Relative humidity in the damp season, 5 to 95.</param>
/// <param name="TemperatureCelsius">Temperature, 0 to 50.</param>
public sealed record ClimateRecord(decimal LowHumidityPercent, decimal HighHumidityPercent, decimal TemperatureCelsius);

/// <summary>What milling takes away, in total over both ends, edges or faces, in millimetres.</summary>
/// <param name="LengthMm">Of the length.</param>
/// <param name="WidthMm">Of the width.</param>
/// <param name="ThicknessMm">Of the thickness.</param>
public sealed record AllowanceRecord(decimal LengthMm, decimal WidthMm, decimal ThicknessMm);

/// <summary>The size of a piece of wood in millimetres.</summary>
/// <param name="ThicknessMm">Thickness.</param>
/// <param name="WidthMm">Width, across the grain.</param>
/// <param name="LengthMm">Length, along the grain.</param>
public sealed record SizeRecord(decimal ThicknessMm, decimal WidthMm, decimal LengthMm);
