namespace Offcuts.Contracts;

/// <summary>
/// Which mix of several designs puts most of the free stock, by the worth of the finished wood, into builds, without a purchase of wood. Give <paramref name="Designs"/> or
/// <paramref name="Tags"/>; what a design leaves open has its defaults and the first answers.
/// </summary>
/// <param name="Designs">The designs, 2 to 8.</param>
/// <param name="Tags">All stored designs that have these tags, 2 to 8 designs.</param>
/// <param name="Inline">What is to be used instead of what is stored; a design with <c>builds</c> takes the place of stored designs.</param>
/// <param name="BudgetMs">Time allowed in milliseconds, 100 to 20000.</param>
/// <param name="Seed">Seed of every random choice, 0 or more.</param>
public sealed record MixRequest(
    IReadOnlyList<MixEntry>? Designs = null,
    IReadOnlyList<string>? Tags = null,
    InlineProblem? Inline = null,
    int BudgetMs = 10_000,
    int Seed = 1);

/// <summary>A design of which a mix may have copies.</summary>
/// <param name="Design">Reference or version id of a stored design; or the name of a build of the design in <c>inline</c>.</param>
/// <param name="Least">Fewest copies.</param>
/// <param name="Most">Most copies; null for any number.</param>
public sealed record MixEntry(string Design, int Least = 0, int? Most = null);

/// <summary>The answer.</summary>
/// <param name="Currency">The currency of all money.</param>
/// <param name="Designs">The designs and how many copies of each the best mix has.</param>
/// <param name="Best">What the best mix takes of the stock; null if none is known.</param>
/// <param name="Sure">Whether it is proved that the wood in the builds of no other mix is worth more, nor as much with more pieces; if there is no best, that there is no mix.</param>
/// <param name="BuildsWorthAtMost">No mix has more wood in its builds than this is worth; null if that is not known.</param>
/// <param name="Tried">How many mixes were looked at.</param>
/// <param name="ElapsedMs">How long it took.</param>
public sealed record MixRecord(
    string Currency, IReadOnlyList<MixedDesignRecord> Designs, MixUseRecord? Best, bool Sure, decimal? BuildsWorthAtMost, int Tried, int ElapsedMs);

/// <summary>A design in a mix.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Reference">Its reference; null for one that is not stored.</param>
/// <param name="Version">Id of its version; null likewise.</param>
/// <param name="Copies">How many copies; null if no mix is known.</param>
/// <param name="Pieces">Parts and panels of one copy.</param>
/// <param name="Worth">What the finished wood of one copy is worth, by the least rate of its species that are in stock.</param>
public sealed record MixedDesignRecord(string Name, string? Reference, string? Version, int? Copies, int Pieces, decimal Worth);

/// <summary>What a mix takes of the stock.</summary>
/// <param name="BuildsWorth">What the finished wood of all builds is worth: what mixes are compared by.</param>
/// <param name="BuildsM3">The same wood in cubic metres.</param>
/// <param name="Pieces">Parts and panels.</param>
/// <param name="ItemCost">What its items cost.</param>
/// <param name="WorthConsumed">What the boards are worth that are cut.</param>
/// <param name="WorthReturned">What the leftovers are worth that come back.</param>
/// <param name="Free">All free boards.</param>
/// <param name="Cut">Those that are cut.</param>
/// <param name="Boards">The same one by one, with what is sawn from them.</param>
/// <param name="Back">The leftovers that come back, together.</param>
/// <param name="Leftovers">The same one by one, the largest first.</param>
public sealed record MixUseRecord(
    decimal BuildsWorth,
    decimal BuildsM3,
    int Pieces,
    decimal ItemCost,
    decimal WorthConsumed,
    decimal WorthReturned,
    PileOfBoardsRecord Free,
    PileOfBoardsRecord Cut,
    IReadOnlyList<FitBoardRecord> Boards,
    PileOfBoardsRecord Back,
    IReadOnlyList<MixLeftoverRecord> Leftovers);

/// <summary>Some boards.</summary>
/// <param name="Boards">How many boards and sheets.</param>
/// <param name="VolumeM3">Their volume in cubic metres.</param>
public sealed record PileOfBoardsRecord(int Boards, decimal VolumeM3);

/// <summary>A leftover.</summary>
/// <param name="Board">Id of the board that it is of.</param>
/// <param name="Species">Species id.</param>
/// <param name="Size">Its size.</param>
public sealed record MixLeftoverRecord(string Board, string Species, SizeRecord Size);

/// <summary>How far it is: the event <c>progress</c>.</summary>
/// <param name="Tried">How many mixes were looked at.</param>
/// <param name="Copies">Copies of each design in the best mix so far, in the order of the designs; null before the first.</param>
public sealed record MixProgressRecord(int Tried, IReadOnlyList<int>? Copies);
