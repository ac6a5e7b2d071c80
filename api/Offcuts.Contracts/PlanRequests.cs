using System.Text.Json.Serialization;

namespace Offcuts.Contracts;

/// <summary>What to plan. Give <paramref name="Design"/>, or <paramref name="Designs"/>, or a design in <paramref name="Inline"/>.</summary>
/// <param name="Design">Reference or version id of a stored design.</param>
/// <param name="Inline">What is to be used instead of what is stored.</param>
/// <param name="BudgetMs">Time allowed in milliseconds, 100 to 300000.</param>
/// <param name="Seed">Seed of every random choice, 0 or more.</param>
/// <param name="From">Id of an earlier plan to start from: what still can be is kept, the boards that it holds count as free, and the answer says what has changed; null to plan from nothing.</param>
/// <param name="With">Values of the design's parameters by their names, millimetres of a length or a count; those left out have their defaults.</param>
/// <param name="Choose">Answers to the design's choices by their names; those left out get the answers that cost least, of equal ones the first.</param>
/// <param name="Without">What the yards turned out not to have: it is left out of the offers; null for nothing.</param>
/// <param name="Designs">References of 2 to 8 stored designs to plan together, the most important first: from one stock, with one order for each supplier.</param>
/// <param name="Purpose"><c>build</c>, or <c>what-if</c> for a plan that is only to tell what would be: it can be left out of the list, and is for building once it is accepted.</param>
public sealed record PlanRequest(
    string? Design = null, InlineProblem? Inline = null, int BudgetMs = 5000, int Seed = 1, string? From = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, decimal>? With = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, string>? Choose = null,
    IReadOnlyList<UnavailableRecord>? Without = null,
    IReadOnlyList<string>? Designs = null,
    string Purpose = "build");

/// <summary>Something that a yard turned out not to have. At least one of the two is given.</summary>
/// <param name="What">Id or name of an offer, or a supplier; null for all offers.</param>
/// <param name="LengthMm">The length that is not there; null for all lengths.</param>
public sealed record UnavailableRecord(string? What = null, decimal? LengthMm = null);

/// <summary>What a plan is made from, given with the request; what is null comes from the store.</summary>
/// <param name="Stock">The boards that may be cut.</param>
/// <param name="Offers">What can be bought.</param>
/// <param name="Shop">How the shop works; members left out take their defaults.</param>
/// <param name="Design">What is to be built.</param>
/// <param name="Rates">What wood is worth to the shop; null to take it from the cheapest offers.</param>
/// <param name="Today">The day on which the plan is made, for the age of boards; null for the service's day.</param>
/// <param name="Places">How hard it is to get at the places that boards name; those that are left out are easy.</param>
/// <param name="KeepRule">What counts as a leftover; null for the stored rule, or, where a shop is given, for none but its keep size.</param>
/// <param name="Terms">What suppliers ask beyond their prices; null for the stored ones with the stored offers, for nothing with given ones.</param>
/// <param name="Builds">Where the design is of several builds: their names, the most important first. The parts of each begin with its name and a colon.</param>
public sealed record InlineProblem(
    IReadOnlyList<StockBoard>? Stock = null,
    IReadOnlyList<OfferRecord>? Offers = null,
    ShopEntry? Shop = null,
    DesignEntry? Design = null,
    RatesRecord? Rates = null,
    DateOnly? Today = null,
    IReadOnlyList<ReachRecord>? Places = null,
    KeepRuleEntry? KeepRule = null,
    IReadOnlyList<SupplierTermsRecord>? Terms = null,
    IReadOnlyList<string>? Builds = null);

/// <summary>What a supplier asks beyond its prices, in the shop's currency; see <see cref="TermsRecord"/>.</summary>
/// <param name="Supplier">The supplier, as its offers name it.</param>
/// <param name="Delivery">What an order costs to bring.</param>
/// <param name="MinimumOrder">The least that an order must come to.</param>
public sealed record SupplierTermsRecord(string Supplier, decimal Delivery = 0, decimal MinimumOrder = 0);

/// <summary>A board that a plan may cut.</summary>
/// <param name="Id">Id, unique among the boards of the request.</param>
/// <param name="Species">Species id, name or alias.</param>
/// <param name="ThicknessMm">Thickness in millimetres.</param>
/// <param name="WidthMm">Width in millimetres.</param>
/// <param name="LengthMm">Length along the grain in millimetres.</param>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>.</param>
/// <param name="Quantity">How many alike.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>.</param>
/// <param name="Appearance"><c>clear</c>, <c>sound-knots</c> or <c>paint</c>.</param>
/// <param name="Defects">Known defects.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="LoggedAt">When it was logged; null for now.</param>
/// <param name="Batch">The same tree or the same lot.</param>
/// <param name="Warp">How far it is out of flat and straight; null for a flat board.</param>
/// <param name="Ends">The state of its ends; null for unknown.</param>
/// <param name="Estimated">Which sides were only estimated; null for none. The plan counts on less of them.</param>
/// <param name="Moisture">The last reading of a moisture meter; null if none is known.</param>
public sealed record StockBoard(
    string Id,
    string Species,
    decimal ThicknessMm,
    decimal WidthMm,
    decimal LengthMm,
    string Kind = "solid",
    int Quantity = 1,
    string Surface = "rough",
    string Appearance = "clear",
    IReadOnlyList<DefectRecord>? Defects = null,
    string? Place = null,
    DateTimeOffset? LoggedAt = null,
    string? Batch = null,
    WarpRecord? Warp = null,
    EndsRecord? Ends = null,
    EstimatesRecord? Estimated = null,
    MoistureRecord? Moisture = null);

/// <summary>What a board foot is worth in the shop's currency, before the size of the piece is taken into account.</summary>
/// <param name="Otherwise">For species that have no rate of their own.</param>
/// <param name="PerBoardFoot">By species id.</param>
public sealed record RatesRecord(decimal Otherwise, IReadOnlyDictionary<string, decimal> PerBoardFoot);
