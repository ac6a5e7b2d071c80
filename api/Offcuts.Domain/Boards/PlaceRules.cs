namespace Offcuts.Domain;

/// <summary>What every place must keep.</summary>
public static class PlaceRules
{
    /// <summary>The most that a place may be said to hold, in cubic metres: a barn full. More was written in the wrong unit.</summary>
    public const decimal LargestLimit = 10_000m;

    // A cubic millimetre: less is no room for wood, and the store keeps no less.
    private const decimal SmallestLimit = 0.000000001m;

    /// <summary>Everything that is wrong with the place, with pointers such as <c>#/limit</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(Place place)
    {
        var faults = new FaultList();
        faults.Text("#/name", place.Name, Limits.MaxLine, required: true);
        faults.Text("#/note", place.Note, Limits.MaxNote);
        if (place.LimitCubicMetres is { } limit && (limit < SmallestLimit || limit > LargestLimit))
        {
            faults.Add("#/limit", $"{limit} m³: give more than 0 and at most {LargestLimit} m³, or leave it out for no limit.");
        }

        return faults.Found;
    }
}
