namespace Offcuts.Domain;

/// <summary>A blank for one or more copies of a part.</summary>
/// <param name="At">Where it lies, and its rough size.</param>
/// <param name="Part">Name of the part.</param>
/// <param name="Copies">The copies that it gives, or layers of them: at least one, and at most as many as the recipe makes.</param>
/// <param name="Turned">Whether the part's length lies across the board.</param>
/// <param name="Recipe">How the blank becomes the copies.</param>
public sealed record PartPiece(Rect At, string Part, IReadOnlyList<PartCopy> Copies, bool Turned, Recipe Recipe) : Piece(At)
{
    /// <summary>A blank for one copy in one piece.</summary>
    /// <param name="at">Where it lies, and its rough size.</param>
    /// <param name="part">Name of the part.</param>
    /// <param name="copy">Which of the part's pieces, from 1.</param>
    /// <param name="turned">Whether the part's length lies across the board.</param>
    public PartPiece(Rect at, string part, int copy, bool turned)
        : this(at, part, [new PartCopy(copy)], turned, Recipe.Plain)
    {
    }

    /// <summary>The size to finish it to, where the part has tolerances (<see cref="Part.Most"/>); null where the part's one size holds.</summary>
    public Dimensions? Finished { get; init; }

    /// <summary>Whether the design asks for it, or it is cut because it costs nothing.</summary>
    public PieceUse Use { get; init; }

    /// <summary>Equal if all is equal, the copies in their order.</summary>
    public bool Equals(PartPiece? other) => other is not null && base.Equals(other)
        && Part == other.Part && Turned == other.Turned && Recipe == other.Recipe && Finished == other.Finished && Use == other.Use && Copies.SequenceEqual(other.Copies);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(base.GetHashCode(), Part, Turned, Recipe, Copies.Count);
}

/// <summary>One copy of a part, or one layer of a copy that is face-glued.</summary>
/// <param name="Copy">Which of the part's pieces, from 1.</param>
/// <param name="Layer">Which layer of it, from 1; 1 for a copy in one piece.</param>
public readonly record struct PartCopy(int Copy, int Layer = 1);

/// <summary>How a blank becomes pieces of its part: milled, perhaps resawn to slices, cut to length, perhaps face-glued.</summary>
/// <param name="InRow">For how many pieces, one behind the other along the board, the blank is long enough; they are milled as one and then cut apart.</param>
/// <param name="Slices">Into how many slices of its thickness it is resawn; 1 for none.</param>
/// <param name="Layers">Of how many layers a copy is face-glued; 1 for a copy in one piece.</param>
/// <param name="Carried">Whether the blank is longer than its pieces need, just as long as is safe at the machines; the rest is cut off after milling.</param>
public readonly record struct Recipe(int InRow, int Slices, int Layers, bool Carried = false)
{
    /// <summary>One blank, one piece.</summary>
    public static Recipe Plain { get; } = new(1, 1, 1);

    /// <summary>The most pieces or layers that the blank gives.</summary>
    public int Most => InRow * Slices;

    /// <summary>From what to what thickness a piece may be milled: the part's own range in one piece; a layer has no tolerance.</summary>
    /// <param name="part">The part.</param>
    public (Length Least, Length Most) PieceThickness(Part part) => Layers == 1
        ? (part.Finished.Thickness, part.MostThickness)
        : (PieceThickness(part.Finished.Thickness), PieceThickness(part.Finished.Thickness));

    /// <summary>Thickness of a layer, or of the part if it is in one piece: the part's in equal shares, rounded up to a tick.</summary>
    /// <param name="finished">Finished thickness of the part.</param>
    public Length PieceThickness(Length finished) => Length.FromTicks((finished.Ticks + Layers - 1) / Layers);
}

/// <summary>One face-glued copy of a part.</summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Copy">Which of the part's pieces, from 1.</param>
/// <param name="Species">The species of all its layers.</param>
/// <param name="Layers">Its layers in order, each milled to the same thickness.</param>
public sealed record Lamination(string Part, int Copy, string Species, IReadOnlyList<LayerPlace> Layers);

/// <summary>Where a layer of a face-glued copy comes from.</summary>
/// <param name="Layer">Order in the copy, from 1.</param>
/// <param name="BoardNumber">Number of the board in the plan.</param>
public sealed record LayerPlace(int Layer, int BoardNumber);
