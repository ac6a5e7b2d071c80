using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Shop;

/// <summary>Humidity and temperature on the command line.</summary>
internal static partial class ShopClimate
{
    /// <summary>The air with what was given of it.</summary>
    /// <exception cref="CliException">It is no range of humidity, or no temperature.</exception>
    public static ClimateRecord With(ClimateRecord old, string? humidity, string? temperature)
    {
        var climate = old;
        if (humidity is not null)
        {
            var range = Range().Match(humidity) is { Success: true } match ? match
                : throw CliException.Invalid($"--humidity: '{humidity}' is no range of relative humidity: write for instance 30..60.");
            climate = climate with { LowHumidityPercent = Number(range, "low"), HighHumidityPercent = Number(range, "high") };
        }

        if (temperature is not null)
        {
            var degrees = Degrees().Match(temperature) is { Success: true } match ? match
                : throw CliException.Invalid($"--temperature: '{temperature}' is no temperature: write for instance 21C or 70F.");
            var value = Number(degrees, "degrees");
            climate = climate with
            {
                TemperatureCelsius = degrees.Groups["scale"].Value is "F" or "f" ? decimal.Round((value - 32) * 5 / 9, 1) : value,
            };
        }

        return climate;
    }

    /// <summary>For instance <c>30..60 %</c>.</summary>
    public static string Humidity(ClimateRecord climate) =>
        string.Create(CultureInfo.InvariantCulture, $"{climate.LowHumidityPercent:0.#}..{climate.HighHumidityPercent:0.#} %");

    /// <summary>For instance <c>21 C (70 F)</c>: both, whatever the unit of lengths.</summary>
    public static string Temperature(ClimateRecord climate) =>
        string.Create(CultureInfo.InvariantCulture, $"{climate.TemperatureCelsius:0.#} C ({(climate.TemperatureCelsius * 9 / 5) + 32:0} F)");

    private static decimal Number(Match match, string name) =>
        decimal.Parse(match.Groups[name].Value, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^ *(?<low>[0-9]{1,3}(?:\.[0-9])?) *%? *(?:\.\.|-| to ) *(?<high>[0-9]{1,3}(?:\.[0-9])?) *%? *$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Range();

    [GeneratedRegex(@"^ *(?<degrees>-?[0-9]{1,3}(?:\.[0-9])?) *\u00b0? *(?<scale>[CF]) *$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Degrees();
}
