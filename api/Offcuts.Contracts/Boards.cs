namespace Offcuts.Contracts;

/// <summary>A board as it is entered. Lengths are decimal millimetres, exact to 0.003125 mm, above 0 and at most 100000.</summary>
/// <param name="Species">Species id, for instance <c>black-walnut</c>.</param>
/// <param name="ThicknessMm">Thickness in millimetres.</param>
/// <param name="WidthMm">Width in millimetres.</param>
/// <param name="LengthMm">Length along the grain in millimetres.</param>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>; left out, what the species is.</param>
/// <param name="Quantity">How many alike, 1 to 10000.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>; left out, rough for solid wood and surfaced for sheets.</param>
/// <param name="Appearance"><c>clear</c>, <c>sound-knots</c> or <c>paint</c>.</param>
/// <param name="Status"><c>free</c>, <c>reserved</c>, <c>used</c> or <c>gone</c>.</param>
/// <param name="Defects">Known defects, at most 100.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Source">Where it came from.</param>
/// <param name="Note">Anything else worth remembering.</param>
/// <param name="Batch">The same tree or the same lot, in the maker's words.</param>
/// <param name="Warp">How far it is out of flat and straight; null for a flat board. Solid wood only.</param>
/// <param name="Ends">The state of its ends; null for unknown.</param>
/// <param name="Estimated">Which sides were only estimated; null for none. Plans count on less of them.</param>
/// <param name="Moisture">The last reading of a moisture meter; null if none is known.</param>
public sealed record BoardEntry(
    string Species,
    decimal ThicknessMm,
    decimal WidthMm,
    decimal LengthMm,
    string? Kind = null,
    int Quantity = 1,
    string? Surface = null,
    string Appearance = "clear",
    string Status = "free",
    IReadOnlyList<DefectRecord>? Defects = null,
    string? Place = null,
    string? Source = null,
    string? Note = null,
    string? Batch = null,
    WarpRecord? Warp = null,
    EndsRecord? Ends = null,
    EstimatesRecord? Estimated = null,
    MoistureRecord? Moisture = null);

/// <summary>A reading of a moisture meter.</summary>
/// <param name="Percent">Moisture content in per cent of the ovendry mass, above 0 and at most 300, to a tenth.</param>
/// <param name="On">The day of the reading, not in the future; left out, today.</param>
public sealed record MoistureRecord(decimal Percent, DateOnly? On = null);

/// <summary>Which sides of a board were only estimated.</summary>
/// <param name="Thickness">Whether its thickness was.</param>
/// <param name="Width">Whether its width was.</param>
/// <param name="Length">Whether its length was.</param>
public sealed record EstimatesRecord(bool Thickness = false, bool Width = false, bool Length = false);

/// <summary>How far a board is out of flat and straight: sagittas in millimetres, measured over the whole board.</summary>
/// <param name="BowMm">How far the face lies off a straight line from end to end.</param>
/// <param name="CrookMm">How far the edge lies off a straight line from end to end.</param>
/// <param name="CupMm">How far the face lies off a straight line from edge to edge.</param>
/// <param name="TwistMm">How high one corner stands when the other three lie flat.</param>
public sealed record WarpRecord(decimal BowMm = 0, decimal CrookMm = 0, decimal CupMm = 0, decimal TwistMm = 0);

/// <summary>The state of a board's ends: <c>unknown</c>, <c>checked</c> or <c>sound</c>.</summary>
/// <param name="Left">The end from which places on the board are measured.</param>
/// <param name="Right">The other end.</param>
public sealed record EndsRecord(string Left = "unknown", string Right = "unknown");

/// <summary>A place on a board from which no part may be cut, in millimetres from the board's left end and lower edge.</summary>
/// <param name="Kind">What it is, in the maker's words.</param>
/// <param name="XMm">Distance along the grain.</param>
/// <param name="YMm">Distance across the grain.</param>
/// <param name="LengthMm">Extent along the grain.</param>
/// <param name="WidthMm">Extent across the grain.</param>
public sealed record DefectRecord(string Kind, decimal XMm, decimal YMm, decimal LengthMm, decimal WidthMm);

/// <summary>A board on the rack: what was entered, its id, when it was logged (UTC) and its species' name as people say it; who holds it and where it comes from.</summary>
public sealed record BoardRecord(
    string Id,
    DateTimeOffset LoggedAt,
    string Species,
    decimal ThicknessMm,
    decimal WidthMm,
    decimal LengthMm,
    string Kind,
    int Quantity,
    string Surface,
    string Appearance,
    string Status,
    IReadOnlyList<DefectRecord> Defects,
    string? Place,
    string? Source,
    string? Note,
    string? SpeciesName = null,
    string? Batch = null,
    WarpRecord? Warp = null,
    EndsRecord? Ends = null,
    IReadOnlyList<HoldRecord>? Holds = null,
    OriginRecord? Origin = null,
    PriceRecord? Price = null,
    EstimatesRecord? Estimated = null,
    MoistureRecord? Moisture = null);

/// <summary>One of a board's quantity that an accepted plan holds.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="Number">The board's number in it.</param>
public sealed record HoldRecord(string PlanId, int Number);

/// <summary>The build that brought a board onto the rack.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="CutFrom">The board that it was cut from; null for one that was bought.</param>
public sealed record OriginRecord(string PlanId, string? CutFrom);

/// <summary>What a board cost.</summary>
/// <param name="Amount">The price of one, or a leftover's share of it.</param>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record PriceRecord(decimal Amount, string Currency);

/// <summary>One page of boards.</summary>
/// <param name="Items">The boards, oldest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record BoardPage(IReadOnlyList<BoardRecord> Items, string? Next);

/// <summary>Many boards at once: all are taken or none.</summary>
/// <param name="Items">1 to 1000 boards.</param>
public sealed record BoardImport(IReadOnlyList<BoardEntry> Items);

/// <summary>What an import did.</summary>
/// <param name="Items">The boards that it made, in its order.</param>
/// <param name="Changed">The boards that a table changed, by their ids.</param>
/// <param name="Unchanged">How many boards of a table are already as it has them.</param>
/// <param name="ImportedBefore">When the same new boards were imported before (UTC), and so were not made again; null if they were not.</param>
public sealed record BoardImportResult(
    IReadOnlyList<BoardRecord> Items, IReadOnlyList<BoardRecord>? Changed = null, int Unchanged = 0, DateTimeOffset? ImportedBefore = null);
