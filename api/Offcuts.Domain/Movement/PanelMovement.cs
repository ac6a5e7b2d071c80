namespace Offcuts.Domain;

/// <summary>What is to be expected of a solid panel, or of a wide part, across the grain over the year.</summary>
/// <param name="Name">Name of the panel or part.</param>
/// <param name="Species">Species id.</param>
/// <param name="Width">Finished width across the grain.</param>
/// <param name="Dry">Moisture content in the dry season, in per cent.</param>
/// <param name="Damp">Moisture content in the damp season, in per cent.</param>
/// <param name="Built">Moisture content when it is built, in per cent.</param>
/// <param name="IsMeasured">Whether that was read on all of its boards, lately; else it is the middle between the seasons.</param>
/// <param name="Change">How much it shrinks and grows; null if nothing is known of how the species moves.</param>
public sealed record PanelMovement(string Name, string Species, Length Width, decimal Dry, decimal Damp, decimal Built, bool IsMeasured, WidthChange? Change);

/// <summary>How much a width changes from what it is built at.</summary>
/// <param name="Shrinks">By how much it is narrower in the dry season.</param>
/// <param name="Grows">By how much it is wider in the damp season.</param>
public sealed record WidthChange(Length Shrinks, Length Grows)
{
    /// <summary>From the narrowest to the widest.</summary>
    public Length Total => Shrinks + Grows;

    /// <summary>
    /// What each edge travels in all where the middle is held: half of the total, rounded up to a tick. A slot must be so much longer than the screw is
    /// thick. Where one edge is held, the other travels all of it.
    /// </summary>
    public Length EachEdge => Half(Total);

    /// <summary>What each edge moves outwards where the middle is held: the gap to leave beside it.</summary>
    public Length Outwards => Half(Grows);

    /// <summary>What each edge moves inwards where the middle is held: how much deeper than needed it must sit in a groove.</summary>
    public Length Inwards => Half(Shrinks);

    private static Length Half(Length length) => Length.FromTicks((length.Ticks + 1) / 2);
}
