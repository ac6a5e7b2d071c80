namespace Offcuts.Domain;

/// <summary>Volume of wood in words.</summary>
public static class VolumeText
{
    /// <summary>Volume as the shop counts it: <c>12.5 bd ft</c>, or <c>0.0295 m³</c> in a metric shop.</summary>
    /// <param name="boardFeet">The volume in board feet.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Format(decimal boardFeet, DisplayUnit unit) => OfCubicMetres(boardFeet * BoardMeasure.CubicMetresPerBoardFoot, unit);

    /// <summary>The same of a volume in cubic metres.</summary>
    /// <param name="cubicMetres">The volume.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string OfCubicMetres(decimal cubicMetres, DisplayUnit unit) => unit switch
    {
        DisplayUnit.Inch => FormattableString.Invariant($"{InUnit(cubicMetres, unit):0.0} {Name(unit)}"),
        DisplayUnit.Millimetre => FormattableString.Invariant($"{InUnit(cubicMetres, unit):0.0000} {Name(unit)}"),
    };

    /// <summary>The number alone.</summary>
    /// <param name="cubicMetres">The volume.</param>
    /// <param name="unit">The shop's unit.</param>
    public static decimal InUnit(decimal cubicMetres, DisplayUnit unit) =>
        unit == DisplayUnit.Inch ? cubicMetres / BoardMeasure.CubicMetresPerBoardFoot : cubicMetres;

    /// <summary>What the number counts.</summary>
    /// <param name="unit">The shop's unit.</param>
    public static string Name(DisplayUnit unit) => unit == DisplayUnit.Inch ? "bd ft" : "m³";
}
