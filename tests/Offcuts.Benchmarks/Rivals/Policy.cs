using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Which of the places that hold a piece fits it best.</summary>
internal enum Fit
{
    /// <summary>That of the least area.</summary>
    Area,

    /// <summary>That with the least left over one way.</summary>
    ShortSide,

    /// <summary>That with the least left over the other way.</summary>
    LongSide,
}

/// <summary>Which piece to buy for a part that no board in stock has room for.</summary>
internal enum Buying
{
    /// <summary>The cheapest for the area of this part.</summary>
    CheapestForPart,

    /// <summary>The cheapest for its own area.</summary>
    CheapestArea,

    /// <summary>The cheapest for the area that this part and those behind it in the order fill.</summary>
    CheapestFilled,
}

/// <summary>How one assignment decides: which place, what to buy, the first direction of cut.</summary>
internal sealed record Policy(Fit Fit, Buying Buying, FirstCut First)
{
    public static List<Policy> All { get; } =
        [.. from fit in Enum.GetValues<Fit>() from buying in Enum.GetValues<Buying>() from first in Enum.GetValues<FirstCut>() select new Policy(fit, buying, first)];
}
