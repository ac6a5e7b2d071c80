using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Seasonal movement in words, sizes rounded up: too much room does no harm.</summary>
public static class MovementText
{
    /// <summary>What to expect of a panel or part, and the room that its fastening must leave.</summary>
    /// <param name="movement">What is expected.</param>
    /// <param name="climate">The air that it is expected in.</param>
    /// <param name="species">The species as people say it.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Of(PanelMovement movement, Climate climate, string species, DisplayUnit unit)
    {
        var what = $"{movement.Name}, {LengthText.Format(movement.Width, unit)} of {species}";
        if (movement.Change is not { } change)
        {
            return $"{what}: nothing is on record of how this species moves; look up its shrinkage before you fix it across the grain.";
        }

        var built = movement.IsMeasured ? $"built at {Percent(movement.Built)} as measured" : $"if built at {Percent(movement.Built)}, midway (no recent reading of all its boards)";
        return $"{what}: moves about {Up(change.Total)} over the year, from {Percent(movement.Dry)} moisture at {Percent(climate.LowHumidity)} humidity "
            + $"to {Percent(movement.Damp)} at {Percent(climate.HighHumidity)}. Taken as flatsawn and {built}, it shrinks {Up(change.Shrinks)} and grows {Up(change.Grows)}. "
            + $"Held at its middle, each edge needs {Up(change.EachEdge)} of play: {Up(change.Outwards)} outwards and {Up(change.Inwards)} inwards; "
            + $"held at one edge, the other needs all {Up(change.Total)}.";

        string Up(Length length) => LengthText.Format(LossText.Up(length, unit), unit);
    }

    /// <summary>The caution that goes with such figures.</summary>
    public static string Caution => "Expected of average wood by the Wood Handbook's equations; boards differ. Where much depends on it, go by your own readings and by established practice.";

    private static string Percent(decimal percent) => string.Create(CultureInfo.InvariantCulture, $"{percent:0.#} %");
}
