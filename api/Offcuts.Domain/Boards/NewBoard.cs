namespace Offcuts.Domain;

/// <summary>A board to be logged: a <see cref="Board"/> that has no id and no status yet.</summary>
public sealed record NewBoard
{
    /// <summary>Solid wood or sheet goods.</summary>
    public BoardKind Kind { get; init; } = BoardKind.Solid;

    /// <summary>The species (for sheets: the material) by its id in the species list.</summary>
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

    /// <summary>How far it is out of flat and straight, measured over the whole board.</summary>
    public Warp Warp { get; init; }

    /// <summary>What is known of its ends.</summary>
    public Ends Ends { get; init; }

    /// <summary>Known defects, as rectangles on the face.</summary>
    public IReadOnlyList<Defect> Defects { get; init; } = [];

    /// <summary>What it belongs to by colour and figure: the same tree or the same lot.</summary>
    public string? Batch { get; init; }

    /// <summary>The last reading of a moisture meter; null if none is known.</summary>
    public MoistureReading? Moisture { get; init; }

    /// <summary>Where it lies.</summary>
    public string? Place { get; init; }

    /// <summary>Where it came from.</summary>
    public string? Source { get; init; }

    /// <summary>When it was first logged; null for now.</summary>
    public DateTimeOffset? LoggedAt { get; init; }

    /// <summary>Anything else worth remembering.</summary>
    public string? Note { get; init; }

    /// <summary>What a board is, without its id and its status.</summary>
    public static NewBoard Of(Board board) => new()
    {
        Kind = board.Kind,
        Species = board.Species,
        Size = board.Size,
        Estimates = board.Estimates,
        Quantity = board.Quantity,
        Surface = board.Surface,
        Appearance = board.Appearance,
        Warp = board.Warp,
        Ends = board.Ends,
        Defects = board.Defects,
        Batch = board.Batch,
        Moisture = board.Moisture,
        Place = board.Place,
        Source = board.Source,
        LoggedAt = board.LoggedAt,
        Note = board.Note,
    };

    /// <summary>The board with the id and the time that the store gives it.</summary>
    public Board ToBoard(string id, DateTimeOffset now) => new()
    {
        Id = id,
        Kind = Kind,
        Species = Species,
        Size = Size,
        Estimates = Estimates,
        Quantity = Quantity,
        Surface = Surface,
        Appearance = Appearance,
        Warp = Warp,
        Ends = Ends,
        Defects = Defects,
        Batch = Batch,
        Moisture = Moisture,
        Place = Place,
        Source = Source,
        LoggedAt = LoggedAt ?? now,
        Note = Note,
    };
}
