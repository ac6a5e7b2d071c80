using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>Worth of a leftover that is kept as the search counts it: the formula of <see cref="Worth"/> in floating point, without rounding.</summary>
internal static class SearchWorth
{
    /// <summary>The width in ticks from which a wider piece is worth no more for its area.</summary>
    public static readonly long FullWidth = Length.FromInches(8).Ticks;
    private static readonly double FullLength = Length.FromInches(96).Ticks;

    public static double RatePerSquareTick(Length thickness, Money perBoardFoot)
    {
        var inch = (double)Length.TicksPerInch;
        return perBoardFoot.MinorUnits * (thickness.Ticks / inch) / (144.0 * inch * inch);
    }

    /// <summary>Worth in minor units of a piece with the given extents in ticks.</summary>
    public static double Of(long along, long across, double ratePerSquareTick) => ratePerSquareTick * along * across
        * (0.3 + (0.7 * Math.Min(1, along / FullLength)))
        * (0.5 + (0.5 * Math.Min(1, across / (double)FullWidth)));
}
