namespace Offcuts.Domain;

/// <summary>What the maker says about one board of a plan once it is cut. What is not said went as planned.</summary>
public sealed record BoardReport
{
    /// <summary>The board's number in the plan.</summary>
    public required int Number { get; init; }

    /// <summary>Its size before cutting, where it was not as planned.</summary>
    public Dimensions? Size { get; init; }

    /// <summary>Planned leftovers that came out otherwise.</summary>
    public IReadOnlyList<LeftoverReport> Leftovers { get; init; } = [];

    /// <summary>Pieces worth keeping that the plan did not foresee.</summary>
    public IReadOnlyList<AddedPiece> Added { get; init; } = [];

    /// <summary>Pieces for parts and panels that came to nothing, by their place among the plan's pieces of the board, from 1.</summary>
    public IReadOnlyList<int> Spoiled { get; init; } = [];

    /// <summary>Faces of what was thrown away beyond the plan.</summary>
    public IReadOnlyList<Area> Waste { get; init; } = [];

    /// <summary>Where the leftovers lie; null for where the board lay.</summary>
    public string? Place { get; init; }

    /// <summary>The leftovers' batch; null for the board's.</summary>
    public string? Batch { get; init; }

    /// <summary>How it is, if it does not add up.</summary>
    public string? Reason { get; init; }
}

/// <summary>A planned leftover that came out otherwise.</summary>
/// <param name="Leftover">Which of the board's planned leftovers, from 1 in the plan's order.</param>
/// <param name="IsKept">Whether it went back to the rack; false if it was thrown away.</param>
/// <param name="Size">Its size, where it is not as planned.</param>
/// <param name="Place">Where it lies; null for where the others lie.</param>
/// <param name="Note">Anything worth remembering.</param>
public sealed record LeftoverReport(int Leftover, bool IsKept, Dimensions? Size = null, string? Place = null, string? Note = null);

/// <summary>A piece worth keeping that the plan did not foresee.</summary>
/// <param name="Size">Its size.</param>
/// <param name="Ends">The state of its ends.</param>
/// <param name="Place">Where it lies; null for where the others lie.</param>
/// <param name="Note">Anything worth remembering.</param>
public sealed record AddedPiece(Dimensions Size, Ends Ends, string? Place = null, string? Note = null);
