namespace Offcuts.Domain;

/// <summary>A board, an offcut or a sheet that the shop owns, or several exactly alike.</summary>
public sealed record Board
{
    /// <summary>The short id that a person writes on the end grain, for instance <c>K7M</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Solid wood or sheet goods.</summary>
    public BoardKind Kind { get; init; } = BoardKind.Solid;

    /// <summary>The species (for sheets: the material) by its id in the species list, for instance <c>black-walnut</c>.</summary>
    public required string Species { get; init; }

    /// <summary>Thickness, width and length as measured.</summary>
    public required Dimensions Size { get; init; }

    /// <summary>Which sides of the size were only estimated.</summary>
    public Estimates Estimates { get; init; }

    /// <summary>How many alike; at least 1.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>Rough from the saw, skip-planed or already surfaced.</summary>
    public Surface Surface { get; init; } = Surface.Rough;

    /// <summary>What its faces are good for.</summary>
    public Appearance Appearance { get; init; } = Appearance.Clear;

    /// <summary>How far it is out of flat and straight, measured over the whole board; of sheets never.</summary>
    public Warp Warp { get; init; }

    /// <summary>What is known of its ends.</summary>
    public Ends Ends { get; init; }

    /// <summary>Known defects, as rectangles on the face. Nothing is cut from them.</summary>
    public IReadOnlyList<Defect> Defects { get; init; } = [];

    /// <summary>
    /// What it belongs to by colour and figure, in the maker's words: boards of one batch came from the same tree or the same lot.
    /// </summary>
    public string? Batch { get; init; }

    /// <summary>The last reading of a moisture meter; null if none is known.</summary>
    public MoistureReading? Moisture { get; init; }

    /// <summary>Where it lies.</summary>
    public string? Place { get; init; }

    /// <summary>Where it came from.</summary>
    public string? Source { get; init; }

    /// <summary>When it was logged.</summary>
    public required DateTimeOffset LoggedAt { get; init; }

    /// <summary>Anything else worth remembering.</summary>
    public string? Note { get; init; }

    /// <summary>Whether it is free to be cut.</summary>
    public BoardStatus Status { get; init; } = BoardStatus.Free;

    /// <summary>The accepted plans that hold it, or some of the boards alike; never more than <see cref="Quantity"/>.</summary>
    public IReadOnlyList<Hold> Holds { get; init; } = [];

    /// <summary>The build that it comes from; null for one that was logged.</summary>
    public Origin? Origin { get; init; }

    /// <summary>What each of them cost; null if that is not known.</summary>
    public BoardPrice? Price { get; init; }

    /// <summary>How many of them a plan may still take.</summary>
    public int FreeQuantity => Status == BoardStatus.Free ? Quantity - Holds.Count : 0;

    /// <summary>The board as it stands once plans hold what they hold: reserved as long as none is left over for others.</summary>
    public Board WithHolds(IReadOnlyList<Hold> holds) => this with
    {
        Holds = holds,
        Status = holds.Count == Quantity ? BoardStatus.Reserved : Holds.Count > 0 || holds.Count > 0 ? BoardStatus.Free : Status,
    };

    /// <summary>The board as it stands once a plan has given back what it holds of it.</summary>
    public Board ReleasedBy(string? planId) => WithHolds([.. Holds.Where(hold => hold.PlanId != planId)]);

    /// <summary>What is left once the plan that holds one of them has cut it: one fewer, or the last one, used.</summary>
    public Board Without(Hold hold)
    {
        IReadOnlyList<Hold> others = [.. Holds.Where(other => other != hold)];
        return Quantity == 1 ? this with { Status = BoardStatus.Used, Holds = [] } : (this with { Quantity = Quantity - 1 }).WithHolds(others);
    }

    /// <summary>A piece that was cut from it and goes back to the rack; the store gives it its id and its time.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="size">The board's own size before cutting.</param>
    /// <param name="planId">The plan by which it was cut.</param>
    public Board Leftover(AddedPiece piece, Dimensions size, string planId) => new()
    {
        Id = "",
        Kind = Kind,
        Species = Species,
        Size = piece.Size,
        Surface = Surface,
        Appearance = Appearance,
        Warp = Warp.Kept(piece.Size, size),
        Ends = piece.Ends,
        Batch = Batch,
        Moisture = Moisture,
        Place = piece.Place ?? Place,
        LoggedAt = default,
        Note = piece.Note,
        Origin = new Origin(planId, Id),
        Price = Price?.Share(piece.Size, size),
    };

    /// <summary>Whether a plan made for the one can be cut from the other: all is alike but where it lies, how damp it is and what is noted.</summary>
    public bool IsSameWoodAs(Board other) =>
        (Kind, Species, Size, Estimates, Surface, Appearance, Warp, Ends, Batch)
            == (other.Kind, other.Species, other.Size, other.Estimates, other.Surface, other.Appearance, other.Warp, other.Ends, other.Batch)
        && Defects.SequenceEqual(other.Defects);
}

/// <summary>What a board is made as.</summary>
public enum BoardKind
{
    /// <summary>Sawn wood.</summary>
    Solid,

    /// <summary>Plywood, fibreboard and other sheets: never planed, so its thickness is used as it is.</summary>
    Sheet,
}

/// <summary>How far a board has been milled.</summary>
public enum Surface
{
    /// <summary>As it came from the sawmill.</summary>
    Rough,

    /// <summary>Planed once at the mill so that the figure shows, with rough patches left (skip-planed, hit-or-miss); edges as sawn.</summary>
    SkipPlaned,

    /// <summary>Both faces planed.</summary>
    Surfaced,
}

/// <summary>What a face is good for, from the best down: a board serves any part that asks for no better than it has.</summary>
public enum Appearance
{
    /// <summary>Clear show face.</summary>
    Clear,

    /// <summary>Sound knots.</summary>
    SoundKnots,

    /// <summary>Paint only.</summary>
    Paint,
}

/// <summary>Where a board is in its life.</summary>
public enum BoardStatus
{
    /// <summary>Free to be cut.</summary>
    Free,

    /// <summary>Promised to a plan.</summary>
    Reserved,

    /// <summary>Cut up.</summary>
    Used,

    /// <summary>Thrown out or given away.</summary>
    Gone,
}

/// <summary>A place on a board from which no part may be cut.</summary>
/// <param name="Kind">What it is, in the maker's words: split, knot, nail.</param>
/// <param name="Area">Where it lies, from the board's left end and lower edge.</param>
public sealed record Defect(string Kind, Rect Area);
