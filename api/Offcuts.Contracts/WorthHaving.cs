namespace Offcuts.Contracts;

/// <summary>Boards that would save some of what a plan spends, if the shop had one more of them.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Items">The boards that were planned for, those that save most first.</param>
public sealed record WorthHavingList(string Plan, string Currency, IReadOnlyList<WorthHavingRecord> Items);

/// <summary>A board that the shop does not have.</summary>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>.</param>
/// <param name="Species">Species id.</param>
/// <param name="SpeciesName">Name of the species.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>.</param>
/// <param name="Size">Its size.</param>
/// <param name="Estimate">What it is worth by the duals of the linear program: a guide, mostly more than it saves.</param>
/// <param name="Saves">What a plan with it spends less, found by planning again; 0 where none was found.</param>
public sealed record WorthHavingRecord(string Kind, string Species, string SpeciesName, string Surface, SizeRecord Size, decimal Estimate, decimal Saves);
