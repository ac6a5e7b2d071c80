namespace Offcuts.Contracts;

/// <summary>What is to be known of a place where boards lie.</summary>
/// <param name="Reach">How hard it is to get at what lies there: <c>easy</c>, <c>behind</c> (some boards must be moved first) or <c>buried</c> (the whole stack). Plans prefer what is easy to get at, but never for money.</param>
/// <param name="LimitM3">How much wood it is to hold at most, in cubic metres; null for no limit.</param>
/// <param name="Note">Anything else worth remembering.</param>
public sealed record PlaceEntry(string Reach = "easy", decimal? LimitM3 = null, string? Note = null);

/// <summary>A place with what lies there.</summary>
/// <param name="Name">Its name, exactly as boards have it.</param>
/// <param name="Reach"><c>easy</c>, <c>behind</c> or <c>buried</c>.</param>
/// <param name="LimitM3">How much wood it is to hold at most, in cubic metres; null for no limit.</param>
/// <param name="Note">Anything else worth remembering.</param>
/// <param name="IsSet">Whether anything was said of it; else boards name it, and it is easy to get at.</param>
/// <param name="Boards">How many boards and sheets lie there, free or held by plans.</param>
/// <param name="VolumeM3">Their volume in cubic metres.</param>
public sealed record PlaceRecord(string Name, string Reach, decimal? LimitM3, string? Note, bool IsSet, int Boards, decimal VolumeM3);

/// <summary>All places.</summary>
/// <param name="Items">By name.</param>
public sealed record PlaceList(IReadOnlyList<PlaceRecord> Items);

/// <summary>How hard it is to get at a place.</summary>
/// <param name="Place">The place, exactly as boards have it.</param>
/// <param name="Reach"><c>easy</c>, <c>behind</c> or <c>buried</c>.</param>
public sealed record ReachRecord(string Place, string Reach);
