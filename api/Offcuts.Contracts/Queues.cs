namespace Offcuts.Contracts;

/// <summary>The builds that wait, the most important first.</summary>
/// <param name="Items">The entries in their order.</param>
public sealed record QueueRecord(IReadOnlyList<QueueItem> Items);

/// <summary>A build that waits.</summary>
/// <param name="Id">Id of the entry.</param>
/// <param name="Position">Its place in the queue, from 1.</param>
/// <param name="Design">Reference of the design.</param>
/// <param name="Name">The design's name; null if there is no such design any more.</param>
/// <param name="AddedAt">When it was added (UTC).</param>
/// <param name="Plan">Id of the accepted plan that builds it; null if there is none. Once that is built, the entry is no longer listed.</param>
public sealed record QueueItem(long Id, int Position, string Design, string? Name, DateTimeOffset AddedAt, string? Plan = null);

/// <summary>A build to add.</summary>
/// <param name="Design">Reference of a stored design.</param>
/// <param name="Position">Its place, from 1; null for the last.</param>
public sealed record QueueEntry(string Design, int? Position = null);

/// <summary>Where an entry is to go.</summary>
/// <param name="Position">Its place, from 1; beyond the last it becomes the last.</param>
public sealed record QueueMove(int Position);

/// <summary>What a plan of several builds has for each, and what planning them together saves.</summary>
/// <param name="Builds">The builds, the most important first: where wood does not suffice, it is given to them in this order.</param>
/// <param name="OneAfterAnother">What the builds would cost one after another, each planned from what the one before leaves, in each order that was tried.</param>
/// <param name="Saves">What the plan spends less than the cheapest of these that makes as much, further stops counted; never below zero.</param>
/// <param name="Setups">The set-ups that several parts share.</param>
public sealed record TogetherRecord(
    IReadOnlyList<BuildShareRecord> Builds, IReadOnlyList<BuildOrderRecord> OneAfterAnother, decimal Saves, IReadOnlyList<SetupRecord> Setups);

/// <summary>What one build has of the plan.</summary>
/// <param name="Name">Its name; its parts are called this, a colon and their own names.</param>
/// <param name="Boards">Numbers of the boards from which its pieces come.</param>
/// <param name="Pieces">How many pieces and strips it gets.</param>
/// <param name="Missing">How many of its pieces are missing.</param>
/// <param name="WoodCost">Its share of the wood that is bought, by the area of its blanks.</param>
/// <param name="ItemCost">What is bought ready made for it.</param>
public sealed record BuildShareRecord(string Name, IReadOnlyList<int> Boards, int Pieces, int Missing, decimal WoodCost, decimal ItemCost);

/// <summary>The builds one after another.</summary>
/// <param name="Builds">Their names in this order.</param>
/// <param name="MissingPieces">How many pieces would be missing.</param>
/// <param name="TotalCost">All money, each build with its own orders.</param>
public sealed record BuildOrderRecord(IReadOnlyList<string> Builds, int MissingPieces, decimal TotalCost);

/// <summary>A set-up that several parts share.</summary>
/// <param name="Kind"><c>plane</c>: the planer's thickness; <c>rip</c>: the fence's distance, a blank's width.</param>
/// <param name="SettingMm">To what it is set, in millimetres.</param>
/// <param name="Parts">The parts and panels.</param>
public sealed record SetupRecord(string Kind, decimal SettingMm, IReadOnlyList<string> Parts);
