namespace Offcuts.Domain;

/// <summary>Volume of wood in words.</summary>
public static class VolumeText
{
    private const decimal CubicMetresInBoardFoot = 0.002359737216m;

    /// <summary>Volume as the shop counts it: <c>12.5 bd ft</c>, or <c>0.0295 m³</c> in a metric shop.</summary>
    /// <param name="boardFeet">The volume in board feet.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Format(decimal boardFeet, DisplayUnit unit) => unit switch
    {
        DisplayUnit.Inch => FormattableString.Invariant($"{boardFeet:0.0} bd ft"),
        DisplayUnit.Millimetre => FormattableString.Invariant($"{boardFeet * CubicMetresInBoardFoot:0.0000} m³"),
    };
}
