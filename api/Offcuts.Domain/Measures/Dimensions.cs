namespace Offcuts.Domain;

/// <summary>The size of a piece of wood: thickness, width across the grain, length along it.</summary>
/// <param name="Thickness">Thickness.</param>
/// <param name="Width">Width, across the grain (on a sheet: across the face grain).</param>
/// <param name="Length">Length, along the grain.</param>
public readonly record struct Dimensions(Length Thickness, Length Width, Length Length)
{
    /// <summary>The face area, width times length.</summary>
    public Area Face => Width * Length;
}
