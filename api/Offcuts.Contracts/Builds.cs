namespace Offcuts.Contracts;

/// <summary>How far the build of an accepted plan is.</summary>
/// <param name="State">
/// <c>accepted</c> (it holds its boards), <c>under-way</c> (some are cut), <c>built</c> (all are cut) or <c>stopped</c> (some are cut, the others given back).
/// </param>
/// <param name="AcceptedAt">When it was accepted (UTC).</param>
/// <param name="HeldUntil">When it gives its boards back by itself; null for never.</param>
/// <param name="Boards">The boards of the plan by number.</param>
public sealed record BuildRecord(string State, DateTimeOffset AcceptedAt, DateTimeOffset? HeldUntil, IReadOnlyList<BuildBoardRecord> Boards);

/// <summary>One board of an accepted plan.</summary>
/// <param name="Number">Its number in the plan.</param>
/// <param name="State"><c>held</c>, <c>to-buy</c>, <c>cut</c> or <c>released</c>.</param>
/// <param name="BoardId">Its id; null for one that is to be bought.</param>
/// <param name="ClosedAt">When it was said to be cut (UTC).</param>
/// <param name="Leftovers">The ids of what went back to the rack.</param>
/// <param name="Balance">Where its wood went.</param>
/// <param name="Reason">How it is, if that does not add up.</param>
public sealed record BuildBoardRecord(
    int Number,
    string State,
    string? BoardId,
    DateTimeOffset? ClosedAt = null,
    IReadOnlyList<string>? Leftovers = null,
    BalanceRecord? Balance = null,
    string? Reason = null);

/// <summary>Where the wood of one board went, as areas of its face in square millimetres.</summary>
/// <param name="BoardMm2">The board before cutting.</param>
/// <param name="PartsMm2">Blanks of parts and strips of panels, as sawn.</param>
/// <param name="LeftoversMm2">What went back to the rack.</param>
/// <param name="KerfMm2">What the saw turned to dust.</param>
/// <param name="WasteMm2">Everything that was thrown away.</param>
/// <param name="DifferenceMm2">What is not accounted for; other than 0 only with a reason.</param>
public sealed record BalanceRecord(decimal BoardMm2, decimal PartsMm2, decimal LeftoversMm2, decimal KerfMm2, decimal WasteMm2, decimal DifferenceMm2);

/// <summary>Boards of an accepted plan that are cut; all are taken or none.</summary>
/// <param name="Boards">What the maker says of each; null for all that are not closed yet, cut as planned.</param>
public sealed record ClosingEntry(IReadOnlyList<BoardClosingEntry>? Boards = null);

/// <summary>A board that is cut. What is left out went as planned.</summary>
/// <param name="Number">Its number in the plan.</param>
/// <param name="Size">Its size before cutting, where it was not as planned.</param>
/// <param name="Leftovers">Planned leftovers that came out otherwise.</param>
/// <param name="Added">Pieces worth keeping that the plan did not foresee.</param>
/// <param name="Spoiled">Pieces for parts and panels that came to nothing, by their place in the plan's list of the board's pieces, from 1.</param>
/// <param name="Waste">What was thrown away beyond the plan.</param>
/// <param name="Place">Where the leftovers lie; left out, where the board lay.</param>
/// <param name="Batch">The leftovers' batch; left out, the board's.</param>
/// <param name="Reason">How it is, if parts, leftovers, kerf and waste do not make the board.</param>
public sealed record BoardClosingEntry(
    int Number,
    SizeRecord? Size = null,
    IReadOnlyList<LeftoverClosingEntry>? Leftovers = null,
    IReadOnlyList<AddedPieceEntry>? Added = null,
    IReadOnlyList<int>? Spoiled = null,
    IReadOnlyList<FaceRecord>? Waste = null,
    string? Place = null,
    string? Batch = null,
    string? Reason = null);

/// <summary>A planned leftover that came out otherwise.</summary>
/// <param name="Leftover">Which of the board's planned leftovers, from 1 in the plan's order.</param>
/// <param name="Kept">Whether it went back to the rack; false if it was thrown away.</param>
/// <param name="Size">Its size, where it is not as planned.</param>
/// <param name="Place">Where it lies; left out, where the others lie.</param>
/// <param name="Note">Anything worth remembering.</param>
public sealed record LeftoverClosingEntry(int Leftover, bool Kept = true, SizeRecord? Size = null, string? Place = null, string? Note = null);

/// <summary>A piece worth keeping that the plan did not foresee.</summary>
/// <param name="Size">Its size.</param>
/// <param name="Ends">The state of its ends; left out for unknown.</param>
/// <param name="Place">Where it lies; left out, where the others lie.</param>
/// <param name="Note">Anything worth remembering.</param>
public sealed record AddedPieceEntry(SizeRecord Size, EndsRecord? Ends = null, string? Place = null, string? Note = null);

/// <summary>A face in millimetres.</summary>
/// <param name="LengthMm">Along the grain.</param>
/// <param name="WidthMm">Across the grain.</param>
public sealed record FaceRecord(decimal LengthMm, decimal WidthMm);
