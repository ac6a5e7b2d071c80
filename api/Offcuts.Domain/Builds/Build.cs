namespace Offcuts.Domain;

/// <summary>How far the build of an accepted plan is.</summary>
/// <param name="AcceptedAt">When its boards were taken.</param>
/// <param name="IsOpen">Whether it still holds the boards that are not cut; false once they were given back.</param>
/// <param name="Closed">The boards that are cut, in the order in which that was said.</param>
public sealed record Build(DateTimeOffset AcceptedAt, bool IsOpen, IReadOnlyList<ClosedBoard> Closed)
{
    /// <summary>Whether a board is cut.</summary>
    /// <param name="number">Its number in the plan.</param>
    public bool HasCut(int number) => Closed.Any(closed => closed.Number == number);
}

/// <summary>A board that a build has cut, and what became of its wood.</summary>
/// <param name="Number">Its number in the plan.</param>
/// <param name="At">When that was said.</param>
/// <param name="BoardId">The board: for one that was bought, the id that it was given then.</param>
/// <param name="IsBought">Whether it was bought for this build.</param>
/// <param name="Thickness">Its thickness: areas times this are volumes.</param>
/// <param name="Balance">Where its wood went.</param>
/// <param name="Leftovers">The ids of what went back to the rack.</param>
/// <param name="Reason">How it is, if it does not add up.</param>
public sealed record ClosedBoard(
    int Number, DateTimeOffset At, string BoardId, bool IsBought, Length Thickness, Balance Balance, IReadOnlyList<string> Leftovers, string? Reason);

/// <summary>Where the wood of one board went, as areas of its face.</summary>
/// <param name="Board">The board before cutting.</param>
/// <param name="Parts">Blanks of parts and strips of panels, as sawn.</param>
/// <param name="Leftovers">What went back to the rack.</param>
/// <param name="Kerf">What the saw turned to dust.</param>
/// <param name="Waste">Everything that was thrown away.</param>
public sealed record Balance(Area Board, Area Parts, Area Leftovers, Area Kerf, Area Waste)
{
    /// <summary>What is not accounted for: above zero where wood is missing, below where more came out than was there.</summary>
    public Area Difference => Board - (Parts + Leftovers + Kerf + Waste);
}
