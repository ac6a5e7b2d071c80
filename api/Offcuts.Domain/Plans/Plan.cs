namespace Offcuts.Domain;

/// <summary>How a design is made: which board each part comes from, what to buy, and how good that is.</summary>
public sealed record Plan
{
    /// <summary>How far the plan is known to be the best.</summary>
    public required PlanStatus Status { get; init; }

    /// <summary>Every board that is cut, in the order in which to cut them.</summary>
    public required IReadOnlyList<BoardCut> Boards { get; init; }

    /// <summary>How the strips go together.</summary>
    public IReadOnlyList<GlueUp> GlueUps { get; init; } = [];

    /// <summary>How the layers of face-glued parts go together.</summary>
    public IReadOnlyList<Lamination> Laminations { get; init; } = [];

    /// <summary>The wood to buy.</summary>
    public IReadOnlyList<Purchase> Purchases { get; init; } = [];

    /// <summary>What can be had neither from stock nor from any offer.</summary>
    public IReadOnlyList<MissingPart> Missing { get; init; } = [];

    /// <summary>How many pieces are missing.</summary>
    public int MissingCount => Missing.Sum(missing => missing.Quantity);

    /// <summary>How many pieces of one of its builds are missing.</summary>
    /// <param name="build">Name of the build (<see cref="PlanningProblem.Builds"/>).</param>
    public int MissingCountOf(string build) => Missing.Where(missing => JointDesign.IsOf(missing.Name, build)).Sum(missing => missing.Quantity);

    /// <summary>How many pieces and spares there are of each part for which the design leaves it open, and the gaps between them.</summary>
    public IReadOnlyList<PartCount> Counts { get; init; } = [];

    /// <summary>What the maker should mind.</summary>
    public IReadOnlyList<PlanWarning> Warnings { get; init; } = [];

    /// <summary>Money spent on wood.</summary>
    public required Money WoodCost { get; init; }

    /// <summary>Money spent on what is bought ready made.</summary>
    public required Money ItemCost { get; init; }

    /// <summary>What suppliers charge beyond the wood and the items, by supplier; only those that charge anything.</summary>
    public IReadOnlyList<SupplierCharge> Charges { get; init; } = [];

    /// <summary>What the suppliers after the first count in the choice between plans (<see cref="Shop.SecondStop"/>); it is not spent.</summary>
    public Money StopCost { get; init; }

    /// <summary>No plan for the same parts (those not missing) under the same cutting rules has a smaller <see cref="Outlay"/> than this.</summary>
    public required Money WoodBound { get; init; }

    /// <summary>Worth of the shop's own boards that the plan cuts up.</summary>
    public required Money WorthConsumed { get; init; }

    /// <summary>Worth of the leftovers that go back to the rack, those of bought boards included.</summary>
    public required Money WorthReturned { get; init; }

    /// <summary>
    /// No plan for the same parts under the same cutting rules that spends no more has a smaller <see cref="WorthUsed"/> than this, whichever species it
    /// chooses; less than nothing where such a plan might return more than it consumes. Null where nothing is known: no time was left, suppliers' terms leave it open, there are too many choices of
    /// species, or any where something is missing, or several builds are planned together.
    /// </summary>
    public Money? WorthBound { get; init; }

    /// <summary>What its builds would cost one after another, in each order that was tried; empty for a plan of one build.</summary>
    public IReadOnlyList<BuildOrder> OneAfterAnother { get; init; } = [];

    /// <summary>How the plan was found.</summary>
    public required PlanRun Run { get; init; }

    /// <summary>Worth that it uses up: consumed less returned. Less than nothing where bought boards leave more than the shop's own boards lose.</summary>
    public Money WorthUsed => WorthConsumed - WorthReturned;

    /// <summary>How far the worth used up may be above the least for the money; null where no bound is known.</summary>
    public Money? WorthGap => WorthBound is { } bound ? WorthUsed - bound : null;

    /// <summary>The purchase by which a bought board comes.</summary>
    /// <param name="board">A board of this plan that is not in stock.</param>
    public Purchase PurchaseOf(BoardCut board) =>
        Purchases.First(purchase => purchase.Offer.Offer.Id == board.OfferId && purchase.Offer.Size == board.Size);

    /// <summary>Money spent on what suppliers charge beyond the wood and the items.</summary>
    public Money ChargeCost => new(Charges.Sum(charge => charge.Total.MinorUnits));

    /// <summary>All money.</summary>
    public Money TotalCost => WoodCost + ItemCost + ChargeCost;

    /// <summary>What plans are chosen by: the wood, the charges, and what further suppliers count. Where there are no terms and no stops it is the wood.</summary>
    public Money Outlay => WoodCost + ChargeCost + StopCost;

    /// <summary>How far the outlay may be above the best possible: (outlay - bound) / outlay; 0 when proved or free.</summary>
    public decimal Gap => Outlay.MinorUnits == 0 ? 0m : (decimal)(Outlay - WoodBound).MinorUnits / Outlay.MinorUnits;
}

/// <summary>How far a plan is known to be the best.</summary>
public enum PlanStatus
{
    /// <summary>All parts are there and nothing cheaper exists: the bound equals the outlay.</summary>
    Proved,

    /// <summary>All parts are there; something cheaper may exist, by no more than the gap.</summary>
    Feasible,

    /// <summary>Some parts can be had neither from stock nor from an offer; they are listed as missing.</summary>
    Incomplete,
}

/// <summary>How a plan was found: enough to find it again.</summary>
/// <param name="Seed">Seed of the random choices.</param>
/// <param name="Budget">Time allowed.</param>
/// <param name="Elapsed">Time taken.</param>
/// <param name="FirstPlanAfter">When the first complete plan was there.</param>
/// <param name="Finished">Whether the search ended by itself, not by the clock or a cancellation; only then does the same seed give the same plan.</param>
/// <param name="PlannerVersion">Version of the planner.</param>
public sealed record PlanRun(int Seed, TimeSpan Budget, TimeSpan Elapsed, TimeSpan FirstPlanAfter, bool Finished, string PlannerVersion);

/// <summary>One board and how it is cut.</summary>
public sealed record BoardCut
{
    /// <summary>Number in cutting order, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Id of the board in stock; null for a bought one.</summary>
    public string? BoardId { get; init; }

    /// <summary>Which of several alike (from 1), for a board in stock with a quantity above one, or for the n-th bought piece of an offer.</summary>
    public int Copy { get; init; } = 1;

    /// <summary>Id of the offer that the board is bought from; null for a board in stock.</summary>
    public string? OfferId { get; init; }

    /// <summary>Solid or sheet.</summary>
    public required BoardKind Kind { get; init; }

    /// <summary>Species id.</summary>
    public required string Species { get; init; }

    /// <summary>Rough, skip-planed or surfaced.</summary>
    public required Surface Surface { get; init; }

    /// <summary>Size before cutting.</summary>
    public required Dimensions Size { get; init; }

    /// <summary>Defects to keep clear of.</summary>
    public IReadOnlyList<Defect> Defects { get; init; } = [];

    /// <summary>Which way the first cuts go.</summary>
    public required FirstCut FirstCut { get; init; }

    /// <summary>All pieces that the board falls into, waste included. Together with the saw cuts they cover the board exactly.</summary>
    public required IReadOnlyList<Piece> Pieces { get; init; }

    /// <summary>The saw cuts in order.</summary>
    public required IReadOnlyList<SawCut> Cuts { get; init; }
}

/// <summary>Which way a board is cut first.</summary>
public enum FirstCut
{
    /// <summary>Crosscut to sections first, then rip.</summary>
    Crosscut,

    /// <summary>Rip to strips first, then crosscut.</summary>
    Rip,
}

/// <summary>One saw cut: the wood that it turns to dust.</summary>
/// <param name="Order">Order from 1.</param>
/// <param name="Direction">Across or along the board.</param>
/// <param name="Kerf">Where the blade runs, as wide as the kerf; narrower only where it runs out at the board's edge.</param>
public sealed record SawCut(int Order, FirstCut Direction, Rect Kerf);

/// <summary>A piece that a board falls into: exactly one of the four kinds below.</summary>
/// <param name="At">Where it lies on the board, and its rough size.</param>
public abstract record Piece(Rect At)
{
    /// <summary>What a blank or strip of a warped board is counted on to lose when it is flattened; null if nothing.</summary>
    public Loss? Loss { get; init; }
}

/// <summary>Why a part's piece is cut.</summary>
public enum PieceUse
{
    /// <summary>The design asks for it.</summary>
    Asked,

    /// <summary>It is one more than the fewest, and the design can use it (<see cref="Part.MostQuantity"/>).</summary>
    More,

    /// <summary>It is a spare (<see cref="Part.Spares"/>); spares are numbered by themselves, from 1.</summary>
    Spare,
}

/// <summary>A strip for an edge-glued panel.</summary>
/// <param name="At">Where it lies, and its rough size.</param>
/// <param name="Panel">Name of the panel.</param>
/// <param name="Copy">Which of the panels of that name, from 1.</param>
/// <param name="SubPanel">Which sub-panel of it, from 1.</param>
/// <param name="Order">Which strip of the sub-panel, from 1.</param>
/// <param name="NetWidth">Width that it is counted for after jointing.</param>
public sealed record StripPiece(Rect At, string Panel, int Copy, int SubPanel, int Order, Length NetWidth) : Piece(At);

/// <summary>A leftover that goes back to the rack.</summary>
/// <param name="At">Where it lies, and its size.</param>
public sealed record LeftoverPiece(Rect At) : Piece(At)
{
    /// <summary>Its ends: sound where the plan saws, else as the board's own end was.</summary>
    public Ends Ends { get; init; }
}

/// <summary>An end or edging too small to keep.</summary>
/// <param name="At">Where it lies, and its size.</param>
public sealed record WastePiece(Rect At) : Piece(At);

/// <summary>One edge-glued panel and the sub-panels it is made from.</summary>
/// <param name="Panel">Name of the panel.</param>
/// <param name="Copy">Which of the panels of that name, from 1.</param>
/// <param name="Species">The species of all its strips.</param>
/// <param name="SubPanels">Its sub-panels, each surfaced before the last seams are made; a single one if the planer takes the whole.</param>
public sealed record GlueUp(string Panel, int Copy, string Species, IReadOnlyList<SubPanel> SubPanels);

/// <summary>Strips that are glued together before surfacing.</summary>
/// <param name="Number">Number in the panel, from 1.</param>
/// <param name="NeededWidth">Width of the sub-panel when it is surfaced: the jointed strips must reach it together. Sub-panels of one panel may differ.</param>
/// <param name="Strips">The strips in order: on which board (its number in the plan) and how wide each counts.</param>
public sealed record SubPanel(int Number, Length NeededWidth, IReadOnlyList<StripPlace> Strips);

/// <summary>Where a strip of a sub-panel comes from.</summary>
/// <param name="Order">Order in the sub-panel, from 1.</param>
/// <param name="BoardNumber">Number of the board in the plan.</param>
/// <param name="NetWidth">Width that it is counted for after jointing.</param>
public sealed record StripPlace(int Order, int BoardNumber, Length NetWidth);

/// <summary>Wood to buy.</summary>
/// <param name="Offer">The offer and the size of the piece.</param>
/// <param name="Count">How many of that size.</param>
public sealed record Purchase(OfferSize Offer, int Count)
{
    /// <summary>Price of all of them.</summary>
    public Money Cost => Offer.Price * Count;
}
