namespace Offcuts.Contracts;

/// <summary>Boards added up.</summary>
/// <param name="By">By what.</param>
/// <param name="Items">By name, or from the thin to the thick, the short to the long, the young to the old.</param>
/// <param name="Total">All of them together.</param>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record BoardTotalsRecord(string By, IReadOnlyList<BoardTotalRecord> Items, BoardTotalRecord Total, string Currency);

/// <summary>Some boards, added up.</summary>
/// <param name="Name">What they have in common, with sizes in the shop's unit.</param>
/// <param name="Boards">How many boards and sheets.</param>
/// <param name="VolumeM3">Their volume in cubic metres.</param>
/// <param name="Worth">What they are worth by the rates with which plans are made.</param>
/// <param name="FromMm">The least length of a band, or the thickness.</param>
/// <param name="ToMm">The length that all of a band are below, or the thickness.</param>
public sealed record BoardTotalRecord(string Name, int Boards, decimal VolumeM3, decimal Worth, decimal? FromMm = null, decimal? ToMm = null);
