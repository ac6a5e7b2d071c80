namespace Offcuts.Domain;

/// <summary>Where a board lies, in words.</summary>
public static class PlaceText
{
    /// <summary>The place, and beside it how hard it is to get at if that is not easy: <c>rack 2 (buried)</c>; null for no place.</summary>
    public static string? Of(string? place, Reach reach) => reach switch
    {
        Reach.Easy => place,
        Reach.Behind => $"{place} (behind)",
        Reach.Buried => $"{place} (buried)",
    };
}
