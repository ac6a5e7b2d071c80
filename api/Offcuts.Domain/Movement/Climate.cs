namespace Offcuts.Domain;

/// <summary>The air in which furniture lives over the year.</summary>
/// <param name="LowHumidity">Relative humidity in the dry season, in per cent.</param>
/// <param name="HighHumidity">Relative humidity in the damp season, in per cent.</param>
/// <param name="Celsius">Temperature in degrees Celsius, the same all year.</param>
public sealed record Climate(decimal LowHumidity, decimal HighHumidity, decimal Celsius)
{
    /// <summary>
    /// A heated room in a temperate climate: 30 % in winter, 60 % in summer, 21 degrees. By the handbook's equation wood then holds 6 to 11 % of water,
    /// its recommendation for furniture in most of the United States (6 to 10 %) and a point more. Deserts and damp coasts differ.
    /// </summary>
    public static Climate Default { get; } = new(30, 60, 21);

    /// <summary>Moisture content of wood in the dry season, in per cent.</summary>
    public decimal DryMoisture => EquilibriumMoisture.At(LowHumidity, Celsius);

    /// <summary>Moisture content of wood in the damp season, in per cent.</summary>
    public decimal DampMoisture => EquilibriumMoisture.At(HighHumidity, Celsius);
}
