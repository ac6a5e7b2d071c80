using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Places;

/// <summary>Places as a person reads them.</summary>
internal static class PlaceView
{
    /// <summary>A list.</summary>
    public static void WriteTable(IReadOnlyList<PlaceRecord> places, DisplayUnit unit, Terminal terminal)
    {
        var limited = places.Any(place => place.LimitM3 is not null);
        var table = new Table(["PLACE", "REACH", ">BOARDS", ">HOLDS", .. limited ? [">LIMIT"] : Array.Empty<string>(), "NOTE"]);
        foreach (var place in places)
        {
            table.Add([
                place.Name, place.Reach, place.Boards.ToString(CultureInfo.InvariantCulture), VolumeText.OfCubicMetres(place.VolumeM3, unit),
                .. limited ? [Limit(place, unit) ?? ""] : Array.Empty<string>(), place.Note]);
        }

        table.Write(terminal);
    }

    /// <summary>Everything about one place.</summary>
    public static void WriteDetails(PlaceRecord place, DisplayUnit unit, Terminal terminal)
    {
        (string Name, string? Value)[] rows =
        [
            ("Place", place.Name), ("Reach", place.Reach), ("Boards", place.Boards.ToString(CultureInfo.InvariantCulture)),
            ("Holds", VolumeText.OfCubicMetres(place.VolumeM3, unit)), ("Limit", Limit(place, unit)), ("Note", place.Note),
        ];
        foreach (var (name, value) in rows.Where(row => !string.IsNullOrEmpty(row.Value)))
        {
            terminal.Out.WriteLine($"{name + ":",-7} {SafeText.Of(value)}");
        }
    }

    private static string? Limit(PlaceRecord place, DisplayUnit unit) => place.LimitM3 is { } limit ? VolumeText.OfCubicMetres(limit, unit) : null;
}
