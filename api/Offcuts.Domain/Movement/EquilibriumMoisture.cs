namespace Offcuts.Domain;

/// <summary>The moisture content at which wood neither gains nor loses water in air of a given temperature and humidity.</summary>
/// <remarks>
/// Forest Products Laboratory, Wood Handbook (FPL-GTR-282, 2021), Eq. 4-5, in its form for degrees Celsius. It was fitted to data that are mainly of
/// Sitka spruce; species differ by more than a tenth of a per cent, so what it gives is approximate however many decimals it has. The table that
/// was made from it reaches from 5 to 95 % relative humidity.
/// </remarks>
public static class EquilibriumMoisture
{
    /// <summary>Least and greatest relative humidity of the handbook's table, in per cent.</summary>
    public static (decimal Least, decimal Most) Humidity => (5, 95);

    /// <summary>Moisture content in per cent of the ovendry mass.</summary>
    /// <param name="humidity">Relative humidity in per cent.</param>
    /// <param name="celsius">Temperature in degrees Celsius.</param>
    public static decimal At(decimal humidity, decimal celsius)
    {
        var square = celsius * celsius;
        var w = 349m + (1.29m * celsius) + (0.0135m * square);
        var k = 0.805m + (0.000736m * celsius) - (0.00000273m * square);
        var k1 = 6.27m - (0.00938m * celsius) - (0.000303m * square);
        var k2 = 1.91m + (0.0407m * celsius) - (0.000293m * square);
        var kh = k * humidity / 100m;
        var (first, second) = (k1 * kh, k1 * k2 * kh * kh);
        return 1800m / w * ((kh / (1m - kh)) + ((first + (2m * second)) / (1m + first + second)));
    }
}
