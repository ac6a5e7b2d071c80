namespace Offcuts.Contracts;

/// <summary>A plan. Money is in <paramref name="Currency"/>, lengths in millimetres.</summary>
/// <param name="Status"><c>proved</c>, <c>feasible</c> or <c>incomplete</c>.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="TotalCost">All money.</param>
/// <param name="WoodCost">Money spent on wood.</param>
/// <param name="ItemCost">Money spent on what is bought ready made.</param>
/// <param name="WoodBound">No plan for the same parts has a smaller outlay: wood, charges and what further stops count. Without suppliers' terms that is the wood alone.</param>
/// <param name="Gap">(outlay - bound) / outlay; 0 when proved or free.</param>
/// <param name="WorthConsumed">Worth of the shop's own boards that are cut up.</param>
/// <param name="WorthReturned">Worth of the leftovers that go back to the rack.</param>
/// <param name="Boards">Every board that is cut, in cutting order.</param>
/// <param name="GlueUps">How the strips go together.</param>
/// <param name="Purchases">The wood to buy.</param>
/// <param name="ShoppingLists">What to buy where, wood and items.</param>
/// <param name="Missing">What can be had neither from stock nor from any offer.</param>
/// <param name="Warnings">What the maker should mind.</param>
/// <param name="Run">How the plan was found.</param>
/// <param name="Counts">Pieces, spares and gaps of each part for which the design leaves them open; null in plans of older versions.</param>
/// <param name="Laminations">How the layers of face-glued parts go together; null in plans of older versions.</param>
/// <param name="Movements">What is to be expected of solid panels and wide parts across the grain over the year; null in plans of older versions.</param>
/// <param name="Changes">What is otherwise than in the plan that it started from; null if it started from none.</param>
/// <param name="ChargeCost">Money spent on delivery and on what orders lack of suppliers' minimums.</param>
/// <param name="StopCost">What suppliers after the first count in the choice between plans; it is not spent.</param>
/// <param name="Together">Where several designs were planned together: what each has of the plan, and what that saves; null for a plan of one design.</param>
/// <param name="WorthBound">
/// No plan for the same parts that spends no more uses up less worth (consumed less returned) than this; less than 0 where one might return more than it consumes. Null where
/// nothing is known: no time was left to tell, money is spent under suppliers' terms, there are too many choices of species, or any where something is missing, several
/// designs are planned together, or the plan is of an older version.
/// </param>
/// <param name="WorthGap">How much more than the bound this plan uses up: consumed - returned - bound; null where there is no bound.</param>
public sealed record PlanResult(
    string Status,
    string Currency,
    decimal TotalCost,
    decimal WoodCost,
    decimal ItemCost,
    decimal WoodBound,
    decimal Gap,
    decimal WorthConsumed,
    decimal WorthReturned,
    IReadOnlyList<BoardCutRecord> Boards,
    IReadOnlyList<GlueUpRecord> GlueUps,
    IReadOnlyList<PurchaseRecord> Purchases,
    IReadOnlyList<ShoppingList> ShoppingLists,
    IReadOnlyList<MissingRecord> Missing,
    IReadOnlyList<WarningRecord> Warnings,
    RunRecord Run,
    IReadOnlyList<PartCountRecord>? Counts = null,
    IReadOnlyList<LaminationRecord>? Laminations = null,
    ChangesRecord? Changes = null,
    IReadOnlyList<MovementRecord>? Movements = null,
    decimal ChargeCost = 0,
    decimal StopCost = 0,
    TogetherRecord? Together = null,
    decimal? WorthBound = null,
    decimal? WorthGap = null);

/// <summary>What is to be expected of a solid panel, or of a wide part, across the grain over the year: approximate, from the Wood Handbook's equations.</summary>
/// <param name="Name">Name of the panel or part.</param>
/// <param name="Species">Species id.</param>
/// <param name="WidthMm">Finished width across the grain.</param>
/// <param name="DryPercent">Moisture content in the dry season, rounded.</param>
/// <param name="DampPercent">Moisture content in the damp season, rounded.</param>
/// <param name="BuiltPercent">Moisture content when it is built, rounded.</param>
/// <param name="Measured">Whether that was read on all of its boards lately; else it is midway between the seasons.</param>
/// <param name="ShrinksMm">By how much it is narrower in the dry season; null if nothing is known of how the species moves.</param>
/// <param name="GrowsMm">By how much it is wider in the damp season; null likewise.</param>
/// <param name="EachEdgeMm">The play of each edge where the middle is held; the other edge needs all of both where one is held.</param>
/// <param name="Text">The same in words, with sizes in the shop's unit.</param>
public sealed record MovementRecord(
    string Name,
    string Species,
    decimal WidthMm,
    decimal DryPercent,
    decimal DampPercent,
    decimal BuiltPercent,
    bool Measured,
    decimal? ShrinksMm,
    decimal? GrowsMm,
    decimal? EachEdgeMm,
    string Text);

/// <summary>How many pieces of a part the plan makes where the design leaves it open.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Count">Pieces, without the spares.</param>
/// <param name="Spares">Spare blanks.</param>
/// <param name="Gaps">The gaps between the pieces; null if the design does not space them.</param>
/// <param name="Text">The same in words, with sizes in the shop's unit.</param>
public sealed record PartCountRecord(string Name, int Count, int Spares, GapsRecord? Gaps, string Text);

/// <summary>Equal gaps: exactly <paramref name="TotalMm"/> / <paramref name="Number"/> each.</summary>
/// <param name="Number">How many.</param>
/// <param name="TotalMm">All of them together.</param>
/// <param name="NearestMm">One of them to the nearest 1/64 in or 0.1 mm, by the shop's unit.</param>
public sealed record GapsRecord(int Number, decimal TotalMm, decimal NearestMm);

/// <summary>One board and how it is cut.</summary>
/// <param name="Number">Number in cutting order, from 1.</param>
/// <param name="BoardId">Id of the board in stock; null for a bought one.</param>
/// <param name="OfferId">Id of the offer it is bought from; null for one in stock.</param>
/// <param name="Copy">Which of several alike, from 1.</param>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>.</param>
/// <param name="Species">Species id.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>.</param>
/// <param name="Size">Size before cutting.</param>
/// <param name="Place">Where a board in stock lies.</param>
/// <param name="Defects">Defects to keep clear of.</param>
/// <param name="FirstCut"><c>crosscut</c> or <c>rip</c>.</param>
/// <param name="Pieces">All pieces the board falls into, waste included; with the kerfs they cover the board exactly.</param>
/// <param name="Cuts">The saw cuts in order.</param>
/// <param name="SpeciesName">The species' name as people say it; null in plans of older versions.</param>
/// <param name="Reach"><c>behind</c> or <c>buried</c> for a board in stock that is hard to get at; null for any other.</param>
public sealed record BoardCutRecord(
    int Number,
    string? BoardId,
    string? OfferId,
    int Copy,
    string Kind,
    string Species,
    string Surface,
    SizeRecord Size,
    string? Place,
    IReadOnlyList<DefectRecord> Defects,
    string FirstCut,
    IReadOnlyList<PieceRecord> Pieces,
    IReadOnlyList<CutRecord> Cuts,
    string? SpeciesName = null,
    string? Reach = null);

/// <summary>A piece, measured from the board's left end and lower edge.</summary>
/// <param name="Kind"><c>part</c>, <c>strip</c>, <c>leftover</c> or <c>waste</c>.</param>
/// <param name="XMm">Distance along the board.</param>
/// <param name="YMm">Distance across the board.</param>
/// <param name="LengthMm">Extent along the board.</param>
/// <param name="WidthMm">Extent across the board.</param>
/// <param name="Name">Name of the part, or of the strip's panel.</param>
/// <param name="Copy">Which of the parts or panels of that name, from 1.</param>
/// <param name="Turned">Whether a part's length lies across the board.</param>
/// <param name="SubPanel">Which sub-panel a strip belongs to, from 1.</param>
/// <param name="Order">Which strip of the sub-panel, from 1.</param>
/// <param name="NetWidthMm">Width that a strip counts for after jointing.</param>
/// <param name="LossThicknessMm">What flattening is counted on to take of a blank or strip of a warped board; null if nothing.</param>
/// <param name="LossWidthMm">How much wider it is sawn for the board's crook; null if nothing.</param>
/// <param name="Ends">The state of a leftover's ends; null in plans of older versions.</param>
/// <param name="Finished">The size to finish a part to, where its design leaves tolerances.</param>
/// <param name="Use"><c>more</c> or <c>spare</c> for a part's extra piece, cut because it costs nothing; else null.</param>
/// <param name="Copies">What a part's blank gives, where that is not just the one copy named by <paramref name="Copy"/>, else null.</param>
/// <param name="InRow">For how many pieces, one behind the other, a part's blank is long enough; null for one.</param>
/// <param name="Slices">Into how many slices a part's blank is resawn; null for none.</param>
/// <param name="Layers">Of how many layers each copy is face-glued; null for one piece.</param>
/// <param name="Carried">Whether a part's blank is longer than its pieces need, to be safe at the machines; null if not.</param>
/// <param name="Steps">What to do with a part's blank, where it is not simply milled to one piece, with sizes in the shop's unit.</param>
public sealed record PieceRecord(
    string Kind,
    decimal XMm,
    decimal YMm,
    decimal LengthMm,
    decimal WidthMm,
    string? Name = null,
    int? Copy = null,
    bool? Turned = null,
    int? SubPanel = null,
    int? Order = null,
    decimal? NetWidthMm = null,
    decimal? LossThicknessMm = null,
    decimal? LossWidthMm = null,
    EndsRecord? Ends = null,
    SizeRecord? Finished = null,
    string? Use = null,
    IReadOnlyList<CopyRecord>? Copies = null,
    int? InRow = null,
    int? Slices = null,
    int? Layers = null,
    bool? Carried = null,
    string? Steps = null);

/// <summary>A copy of a part, or a layer of one.</summary>
/// <param name="Copy">Which of the parts of that name, from 1.</param>
/// <param name="Layer">Which layer of it, from 1; 1 for a copy in one piece.</param>
public sealed record CopyRecord(int Copy, int Layer = 1);

/// <summary>One face-glued copy of a part.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Copy">Which of the parts of that name, from 1.</param>
/// <param name="Species">Species of all its layers.</param>
/// <param name="LayerThicknessMm">Thickness to which each layer is milled.</param>
/// <param name="Layers">Its layers in order.</param>
/// <param name="SpeciesName">The species' name as people say it.</param>
public sealed record LaminationRecord(
    string Part, int Copy, string Species, decimal LayerThicknessMm, IReadOnlyList<LayerRecord> Layers, string? SpeciesName = null);

/// <summary>Where a layer comes from.</summary>
/// <param name="Layer">Order in the copy, from 1.</param>
/// <param name="BoardNumber">Number of the board in the plan.</param>
public sealed record LayerRecord(int Layer, int BoardNumber);

/// <summary>A saw cut: the wood that it turns to dust.</summary>
/// <param name="Order">Order from 1.</param>
/// <param name="Direction"><c>crosscut</c> or <c>rip</c>.</param>
/// <param name="XMm">Distance along the board.</param>
/// <param name="YMm">Distance across the board.</param>
/// <param name="LengthMm">Extent along the board.</param>
/// <param name="WidthMm">Extent across the board.</param>
public sealed record CutRecord(int Order, string Direction, decimal XMm, decimal YMm, decimal LengthMm, decimal WidthMm);

/// <summary>One edge-glued panel.</summary>
/// <param name="Panel">Name of the panel.</param>
/// <param name="Copy">Which of the panels of that name, from 1.</param>
/// <param name="Species">Species of all its strips.</param>
/// <param name="SubPanels">Its sub-panels; a single one if the planer takes the whole.</param>
/// <param name="SpeciesName">The species' name as people say it; null in plans of older versions.</param>
public sealed record GlueUpRecord(string Panel, int Copy, string Species, IReadOnlyList<SubPanelRecord> SubPanels, string? SpeciesName = null);

/// <summary>Strips that are glued together before surfacing.</summary>
/// <param name="Number">Number in the panel, from 1.</param>
/// <param name="NeededWidthMm">Width of the sub-panel when it is surfaced: the jointed strips must reach it together. Sub-panels of one panel may differ.</param>
/// <param name="Strips">The strips in order.</param>
public sealed record SubPanelRecord(int Number, decimal NeededWidthMm, IReadOnlyList<StripRecord> Strips);

/// <summary>Where a strip comes from.</summary>
/// <param name="Order">Order in the sub-panel, from 1.</param>
/// <param name="BoardNumber">Number of the board in the plan.</param>
/// <param name="NetWidthMm">Width that it counts for after jointing.</param>
public sealed record StripRecord(int Order, int BoardNumber, decimal NetWidthMm);

/// <summary>Wood to buy.</summary>
/// <param name="OfferId">Id of the offer.</param>
/// <param name="Supplier">Who sells it.</param>
/// <param name="Name">What the supplier calls it.</param>
/// <param name="Kind"><c>solid</c> or <c>sheet</c>.</param>
/// <param name="Species">Species id.</param>
/// <param name="Surface"><c>rough</c>, <c>skip-planed</c> or <c>surfaced</c>.</param>
/// <param name="Size">Size of the piece.</param>
/// <param name="Count">How many.</param>
/// <param name="UnitPrice">Price of one.</param>
/// <param name="Cost">Price of all of them.</param>
/// <param name="SupplierName">The supplier's name as written; null if it is not known.</param>
/// <param name="SpeciesName">The species' name as people say it; null in plans of older versions.</param>
/// <param name="Rate">What the supplier charges by; null in plans of older versions.</param>
public sealed record PurchaseRecord(
    string OfferId,
    string Supplier,
    string? Name,
    string Kind,
    string Species,
    string Surface,
    SizeRecord Size,
    int Count,
    decimal UnitPrice,
    decimal Cost,
    string? SupplierName = null,
    string? SpeciesName = null,
    RateRecord? Rate = null);

/// <summary>What a supplier charges by.</summary>
/// <param name="Price">Price of one unit.</param>
/// <param name="Unit"><c>piece</c>, <c>foot</c>, <c>metre</c>, <c>board-foot</c> or <c>cubic-metre</c>; the last two mean random widths and lengths.</param>
public sealed record RateRecord(decimal Price, string Unit);

/// <summary>What to buy at one supplier.</summary>
/// <param name="Supplier">The supplier; null for items that may be bought anywhere.</param>
/// <param name="Wood">The wood.</param>
/// <param name="Items">What is bought ready made.</param>
/// <param name="Total">Price of all of it.</param>
/// <param name="SupplierName">The supplier's name as written; null if it is not known.</param>
/// <param name="Delivery">What the supplier charges for bringing it, part of the total.</param>
/// <param name="TopUp">What the order lacks of the supplier's minimum, part of the total.</param>
public sealed record ShoppingList(
    string? Supplier,
    IReadOnlyList<PurchaseRecord> Wood,
    IReadOnlyList<ItemRecord> Items,
    decimal Total,
    string? SupplierName = null,
    decimal Delivery = 0,
    decimal TopUp = 0);

/// <summary>A part or panel that the plan does not make, and why.</summary>
/// <param name="Name">Name of the part or panel.</param>
/// <param name="Quantity">How many are missing.</param>
/// <param name="Code">Why, as one word.</param>
/// <param name="Reason">Why, in a sentence with sizes in the shop's unit.</param>
/// <param name="Closest">Id of the board or offer that comes closest.</param>
/// <param name="NeededMm">What it would have to have, where the reason is a size.</param>
/// <param name="HasMm">What it has instead.</param>
public sealed record MissingRecord(string Name, int Quantity, string Code, string Reason, string? Closest, decimal? NeededMm, decimal? HasMm);

/// <summary>Something about a plan that the maker should mind.</summary>
/// <param name="Code">What it is, as one word.</param>
/// <param name="Subject">Name of the part or id of the board that it is about.</param>
/// <param name="Text">A sentence with sizes in the shop's unit.</param>
/// <param name="ValueMm">The size in question, if one is.</param>
/// <param name="LimitMm">The shop's limit for it, if there is one.</param>
public sealed record WarningRecord(string Code, string Subject, string Text, decimal? ValueMm, decimal? LimitMm);

/// <summary>How a plan was found: enough to find it again.</summary>
/// <param name="Seed">Seed of the random choices.</param>
/// <param name="BudgetMs">Time allowed, in milliseconds.</param>
/// <param name="ElapsedMs">Time taken, in milliseconds.</param>
/// <param name="FirstPlanAfterMs">When the first complete plan was there, in milliseconds.</param>
/// <param name="Finished">Whether the search ended by itself; only then does the same seed give the same plan.</param>
/// <param name="PlannerVersion">Version of the planner.</param>
public sealed record RunRecord(int Seed, int BudgetMs, int ElapsedMs, int FirstPlanAfterMs, bool Finished, string PlannerVersion);
