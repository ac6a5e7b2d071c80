namespace Offcuts.Domain;

/// <summary>A reading of a moisture meter: the mass of the water in the wood in per cent of the mass of the ovendry wood.</summary>
/// <param name="Percent">Moisture content in per cent, above 0 and at most <see cref="Most"/>, to a tenth: green wood holds more water than wood.</param>
/// <param name="On">The day of the reading; null until the store gives it the day on which it was told of it.</param>
public readonly record struct MoistureReading(decimal Percent, DateOnly? On = null)
{
    /// <summary>The most moisture content that is taken, in per cent: the wettest green sapwood holds somewhat over 200 (Forest Products Laboratory, Wood Handbook, chapter 4).</summary>
    public const decimal Most = 300;

    private static readonly DateOnly First = new(1900, 1, 1);

    /// <summary>What is wrong with it and how to mend it; null if nothing is.</summary>
    public string? Fault() =>
        Percent is <= 0 or > Most ? FormattableString.Invariant($"{Percent} % is no moisture content of wood: give more than 0 and at most {Most} %.")
        : decimal.Round(Percent, 1) != Percent ? FormattableString.Invariant($"{Percent} %: give a moisture content to a tenth of a per cent, as meters show it.")
        : On < First ? FormattableString.Invariant($"{On:yyyy-MM-dd}: give the day on which the reading was taken.")
        : null;

    /// <summary>The reading with its day, where it has none yet.</summary>
    /// <param name="today">The day on which it is told.</param>
    public MoistureReading Dated(DateOnly today) => On is null ? this with { On = today } : this;

    /// <summary>How many days old it is; 0 for one that has no day yet.</summary>
    public int Age(DateOnly today) => On is { } day ? today.DayNumber - day.DayNumber : 0;
}
