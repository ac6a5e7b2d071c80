namespace Offcuts.Contracts;

/// <summary>What the shop keeps, as it is entered: entries in order, of which the first that decides about a piece holds.</summary>
/// <param name="Entries">The entries, at most 100; none to keep what reaches the shop's keep size.</param>
public sealed record KeepRuleEntry(IReadOnlyList<KeepEntryRecord> Entries);

/// <summary>One entry of the rule.</summary>
/// <param name="Word">
/// <c>never</c> lets go what it is about; <c>always</c> keeps what reaches its sizes; <c>keep</c> keeps what reaches its sizes and of its species nothing else.
/// </param>
/// <param name="Species">Ids of species, or classes, that it is about; null for any.</param>
/// <param name="Sizes">
/// Of <c>never</c>, what is under any side of any of them goes, and everything if there are none. Of the others, what reaches every side of one of them is
/// kept; <c>keep</c> needs at least one.
/// </param>
public sealed record KeepEntryRecord(string Word, IReadOnlyList<string>? Species = null, IReadOnlyList<KeepSizeRecord>? Sizes = null);

/// <summary>Sizes that an entry names, at least one; null for what does not matter (at least 50.8 x 12.7 x 3.175 mm then, for what is kept).</summary>
/// <param name="LengthMm">Along the grain.</param>
/// <param name="WidthMm">Across the grain.</param>
/// <param name="ThicknessMm">Thickness.</param>
/// <param name="SectionMm2">Thickness times width, in square millimetres.</param>
public sealed record KeepSizeRecord(decimal? LengthMm = null, decimal? WidthMm = null, decimal? ThicknessMm = null, decimal? SectionMm2 = null);

/// <summary>What the shop keeps.</summary>
/// <param name="Entries">The entries in order.</param>
/// <param name="Text">Each in words, with sizes in the shop's unit; the shop's keep size, which holds where none decides, last.</param>
/// <param name="Otherwise">The shop's keep size.</param>
public sealed record KeepRuleRecord(IReadOnlyList<KeepEntryRecord> Entries, IReadOnlyList<string> Text, SizeRecord Otherwise);

/// <summary>Whether a piece is worth keeping.</summary>
/// <param name="Keep">Whether it is.</param>
/// <param name="Understood">The piece in words, as it was understood.</param>
/// <param name="Rule">Number of the entry that decides, from 1; 0 for the shop's keep size.</param>
/// <param name="Reason">Why, with sizes in the shop's unit.</param>
public sealed record KeepAnswer(bool Keep, string Understood, int Rule, string Reason);
