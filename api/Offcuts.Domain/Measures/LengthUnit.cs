namespace Offcuts.Domain;

/// <summary>Units in which a length may be written.</summary>
internal enum LengthUnit
{
    Inch,
    Foot,
    Millimetre,
    Centimetre,
    Metre,
}

/// <summary>What the units are.</summary>
internal static class LengthUnits
{
    public static LengthUnit ToLengthUnit(this DisplayUnit unit) => unit switch
    {
        DisplayUnit.Inch => LengthUnit.Inch,
        DisplayUnit.Millimetre => LengthUnit.Millimetre,
    };

    public static bool IsMetric(this LengthUnit unit) => unit >= LengthUnit.Millimetre;

    public static long Ticks(this LengthUnit unit) => unit switch
    {
        LengthUnit.Inch => Length.TicksPerInch,
        LengthUnit.Foot => 12 * Length.TicksPerInch,
        LengthUnit.Millimetre => Length.TicksPerMillimetre,
        LengthUnit.Centimetre => 10 * Length.TicksPerMillimetre,
        LengthUnit.Metre => 1000 * Length.TicksPerMillimetre,
    };

    /// <summary>What a bare number beside one in this unit is in: nobody writes a thickness in feet or metres.</summary>
    public static LengthUnit Beside(LengthUnit unit) => unit switch
    {
        LengthUnit.Foot => LengthUnit.Inch,
        LengthUnit.Metre => LengthUnit.Millimetre,
        _ => unit,
    };

    /// <summary>The unit with this name or mark, in any case; null if there is none.</summary>
    public static LengthUnit? Named(string name) => name.TrimEnd('.').ToLowerInvariant() switch
    {
        "\"" or "in" or "inch" or "inches" => LengthUnit.Inch,
        "'" or "ft" or "foot" or "feet" => LengthUnit.Foot,
        "mm" => LengthUnit.Millimetre,
        "cm" => LengthUnit.Centimetre,
        "m" => LengthUnit.Metre,
        _ => null,
    };
}
