namespace Offcuts.Domain;

/// <summary>How wood changes its size across the grain with its moisture content.</summary>
/// <remarks>
/// Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), chapter 13. Real boards are seldom quite flatsawn or quite quartersawn, so that the
/// change in width tends to be overstated. Along the grain wood moves so little that nobody counts it.
/// </remarks>
public static class WoodMovement
{
    private const decimal UsualFibreSaturation = 30m;

    /// <summary>The moisture contents between which the coefficients hold, in per cent.</summary>
    public static (decimal Least, decimal Most) Linear => (6, 14);

    /// <summary>By how much a flatsawn width changes, below zero if it shrinks; null if nothing is known of the species.</summary>
    /// <param name="species">The species.</param>
    /// <param name="width">The width at the first moisture content.</param>
    /// <param name="from">Moisture content to start from, in per cent.</param>
    /// <param name="to">Moisture content to go to, in per cent.</param>
    /// <returns>The change in ticks, not rounded.</returns>
    public static decimal? TangentialTicks(Species species, Length width, decimal from, decimal to) =>
        Change(species.TangentialCoefficient, species.TangentialShrinkage, species.FibreSaturation ?? UsualFibreSaturation, from, to) is { } change
            ? width.Ticks * change
            : null;

    /// <summary>The same across a quartersawn width, or through the thickness of a flatsawn board.</summary>
    public static decimal? RadialTicks(Species species, Length width, decimal from, decimal to) =>
        Change(species.RadialCoefficient, species.RadialShrinkage, species.FibreSaturation ?? UsualFibreSaturation, from, to) is { } change
            ? width.Ticks * change
            : null;

    /// <summary>The change as a share of the size.</summary>
    private static decimal? Change(decimal? coefficient, decimal? shrinkage, decimal saturation, decimal from, decimal to)
    {
        var isLinear = Math.Min(from, to) >= Linear.Least && Math.Max(from, to) <= Linear.Most;
        // Eq. 13-2: D C (to - from), within the range of the coefficients; beyond it only where there is nothing better.
        if (coefficient is { } c && (isLinear || shrinkage is null))
        {
            return c * (Math.Min(to, saturation) - Math.Min(from, saturation));
        }

        if (shrinkage is not { } s)
        {
            return null;
        }

        // Eq. 13-3: D (to - from) / (F 100 / S - F + from); wetter than fibre saturation (F) wood does not change.
        var (start, end) = (Math.Min(from, saturation), Math.Min(to, saturation));
        return (end - start) / ((saturation * 100m / s) - saturation + start);
    }
}
