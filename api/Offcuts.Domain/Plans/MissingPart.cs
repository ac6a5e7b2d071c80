namespace Offcuts.Domain;

/// <summary>A part or panel that the plan does not make, and why.</summary>
/// <param name="Name">Name of the part or panel.</param>
/// <param name="Quantity">How many are missing.</param>
/// <param name="Reason">Why no board and no offer gives it.</param>
/// <param name="Closest">Id of the board or offer that comes closest; null if none has the species.</param>
/// <param name="Needed">What that board or offer would have to have, where the reason is a size.</param>
/// <param name="Has">What it has instead.</param>
public sealed record MissingPart(
    string Name, int Quantity, MissingReason Reason, string? Closest = null, Length? Needed = null, Length? Has = null);

/// <summary>Why a part cannot be had, in the order in which a source is ruled out.</summary>
public enum MissingReason
{
    /// <summary>No board and no offer is of an accepted species.</summary>
    NoSuchSpecies,

    /// <summary>None of that species is of the one batch from which all of its finish group is to come.</summary>
    NotOfOneBatch,

    /// <summary>None of that species looks good enough.</summary>
    NotGoodEnough,

    /// <summary>None is thick enough to mill; for sheets, none has exactly the part's thickness.</summary>
    WrongThickness,

    /// <summary>The piece is wider than the shop's jointer or planer takes.</summary>
    TooWideForMachines,

    /// <summary>None is long enough.</summary>
    TooShort,

    /// <summary>None is wide enough.</summary>
    TooNarrow,

    /// <summary>Boards or offers would do but for their warp: flattened or straightened, none leaves enough.</summary>
    TooWarped,

    /// <summary>Boards or offers would do, but there are too few of them.</summary>
    TooFew,
}

/// <summary>Something about a plan that the maker should mind.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Subject">Name of the part or id of the board that it is about.</param>
/// <param name="Value">The size in question, if one is.</param>
/// <param name="Limit">The shop's limit for it, if there is one.</param>
public sealed record PlanWarning(WarningKind Kind, string Subject, Length? Value = null, Length? Limit = null);

/// <summary>What a maker should mind.</summary>
public enum WarningKind
{
    /// <summary>A blank is shorter than is safe at the planer.</summary>
    ShortForPlaner,

    /// <summary>A blank is shorter than is safe at the jointer.</summary>
    ShortForJointer,

    /// <summary>A board has recorded defects: the plan cuts around them, but a record is not the wood.</summary>
    Defects,

    /// <summary>A wide solid panel moves across the grain with the seasons.</summary>
    WidePanel,

    /// <summary>Blanks of a part are resawn to slices, which are milled afterwards.</summary>
    Resawn,

    /// <summary>A part is face-glued from layers: how strong that is, the plan does not know.</summary>
    Laminated,

    /// <summary>The size of a board was only estimated: the plan counts on less than was written down.</summary>
    Estimated,

    /// <summary>A wide panel is glued up from boards of different batches.</summary>
    MixedBatches,

    /// <summary>Some boards of a wide panel have a recent moisture reading and others have none, or one that is too old.</summary>
    StaleReadings,

    /// <summary>The moisture readings of a wide panel's boards are too far apart.</summary>
    UnequalMoisture,
}
