using System.Text.Json.Serialization;
using Refit;

namespace Offcuts.Contracts;

/// <summary>Which of the saved designs to rank against the free stock, and how; what is null takes its default.</summary>
public sealed record FitQuery
{
    /// <summary><c>cheapest</c> to finish, or <c>pile</c>: what eats most of it; <c>pile</c> where species, place or batch is given.</summary>
    [AliasAs("order")]
    public string? Order { get; init; }

    /// <summary>The species whose boards count as the pile, by id or name.</summary>
    [AliasAs("species")]
    public string? Species { get; init; }

    /// <summary>The place whose boards count as the pile, exactly as entered.</summary>
    [AliasAs("place")]
    public string? Place { get; init; }

    /// <summary>The batch whose boards count as the pile, exactly as entered.</summary>
    [AliasAs("batch")]
    public string? Batch { get; init; }

    /// <summary>Tags that a design must have, with commas between them.</summary>
    [AliasAs("tags")]
    public string? Tags { get; init; }

    /// <summary>The most hours of work.</summary>
    [AliasAs("maxHours")]
    public decimal? MaxHours { get; init; }

    /// <summary>The most money still to spend.</summary>
    [AliasAs("maxCost")]
    public decimal? MaxCost { get; init; }

    /// <summary>How many places, 1 to 2000; 10 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }

    /// <summary>Time to rank in milliseconds, 100 to 300000; 30000 if null.</summary>
    [AliasAs("budgetMs")]
    public int? BudgetMs { get; init; }
}

/// <summary>How a ranking came out.</summary>
/// <param name="Order"><c>cheapest</c> or <c>pile</c>.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Items">The places, first one first.</param>
/// <param name="End">How it ended.</param>
public sealed record FitList(string Order, string Currency, IReadOnlyList<FitRecord> Items, FitEnd End);

/// <summary>A design in its place.</summary>
/// <param name="Place">The place, from 1.</param>
/// <param name="Design">Reference of the design.</param>
/// <param name="Name">Its name.</param>
/// <param name="Version">Id of the version that was ranked.</param>
/// <param name="Cost">Money still to spend: wood, what suppliers charge beyond it, and ready-made items.</param>
/// <param name="WoodCost">Money for wood.</param>
/// <param name="WoodBound">No plan for the same parts spends less on wood, charges and what further stops count.</param>
/// <param name="ItemCost">Money for ready-made items.</param>
/// <param name="ShareFromStock">The share of the finished wood that comes from stock, 0 to 1.</param>
/// <param name="FromStockM3">The same in cubic metres.</param>
/// <param name="Eaten">The wood of its finished parts that comes from the pile, by its worth, old and awkward pieces counting more.</param>
/// <param name="Sure">Whether the place is by a careful plan: a thorough one, or one that is proved to cost the least (in the order pile made with care for which boards are cut); else near ties may be the other way round.</param>
/// <param name="Lacks">What is missing to build it, in one line; <c>nothing</c> if nothing is.</param>
/// <param name="Boards">The boards in stock that it takes.</param>
/// <param name="Buy">The wood to buy.</param>
/// <param name="Missing">Parts and panels that can be had neither from stock nor from an offer.</param>
/// <param name="Tags">Its tags; null for none.</param>
/// <param name="Hours">Its hours of work; null if not said.</param>
public sealed record FitRecord(
    int Place,
    string Design,
    string Name,
    string Version,
    decimal Cost,
    decimal WoodCost,
    decimal WoodBound,
    decimal ItemCost,
    decimal ShareFromStock,
    decimal FromStockM3,
    decimal Eaten,
    bool Sure,
    string Lacks,
    IReadOnlyList<FitBoardRecord> Boards,
    IReadOnlyList<PurchaseRecord> Buy,
    IReadOnlyList<MissingRecord> Missing,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tags = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? Hours = null);

/// <summary>A board in stock that a build takes.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Count">How many of those alike.</param>
/// <param name="PartsM3">What they give of the finished parts and panels that the design asks for, in cubic metres.</param>
public sealed record FitBoardRecord(string Id, int Count, decimal PartsM3);

/// <summary>How far a ranking is: the event <c>progress</c>.</summary>
/// <param name="Designs">Designs to rank.</param>
/// <param name="LookedAt">Of those, how many were looked at.</param>
/// <param name="Remembered">Of those, how many were planned for an earlier ranking and need no plan now.</param>
/// <param name="Planned">Plans made.</param>
public sealed record FitProgressRecord(int Designs, int LookedAt, int Remembered, int Planned);

/// <summary>How a ranking ended: the event <c>end</c>.</summary>
/// <param name="Order"><c>cheapest</c> or <c>pile</c>.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Designs">Designs that were to be ranked.</param>
/// <param name="Remembered">Of those, how many were planned for an earlier ranking and needed no plan now.</param>
/// <param name="Planned">Plans made.</param>
/// <param name="Filtered">Designs left out by their tags or hours.</param>
/// <param name="TooDear">Designs left out because they would cost more than <c>maxCost</c>, or cannot be finished.</param>
/// <param name="EatNone">Designs left out because they take nothing of the species, place or batch that was asked for.</param>
/// <param name="Failed">References of designs that could not be planned.</param>
/// <param name="Finished">Whether it ended before time was up; else places may be missing.</param>
public sealed record FitEnd(
    string Order, string Currency, int Designs, int Remembered, int Planned, int Filtered, int TooDear, int EatNone, IReadOnlyList<string> Failed, bool Finished);

/// <summary>What one board could become.</summary>
/// <param name="Board">The board.</param>
/// <param name="Items">The designs of which it gives any part, by name of their reference.</param>
public sealed record BoardUsesRecord(BoardRecord Board, IReadOnlyList<DesignUsesRecord> Items);

/// <summary>What one board gives for a design.</summary>
/// <param name="Design">Reference of the design.</param>
/// <param name="Name">Its name.</param>
/// <param name="Version">Id of the version.</param>
/// <param name="Parts">Its parts and panels of which the board gives any.</param>
public sealed record DesignUsesRecord(string Design, string Name, string Version, IReadOnlyList<PartUseRecord> Parts);

/// <summary>What one board gives for a part or panel, where nothing else is cut from it.</summary>
/// <param name="Name">The part or panel.</param>
/// <param name="Kind"><c>part</c> or <c>panel</c>.</param>
/// <param name="ThicknessMm">Finished thickness.</param>
/// <param name="WidthMm">Finished width.</param>
/// <param name="LengthMm">Finished length.</param>
/// <param name="Wanted">How many the design asks for.</param>
/// <param name="Count">How many whole ones the board gives; of a panel 0 where its strips are too narrow together.</param>
/// <param name="StripWidthMm">Of a panel, the width that its strips reach together after jointing; null of a part.</param>
public sealed record PartUseRecord(
    string Name, string Kind, decimal ThicknessMm, decimal WidthMm, decimal LengthMm, int Wanted, int Count,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? StripWidthMm = null);
