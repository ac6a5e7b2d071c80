namespace Offcuts.Domain;

/// <summary>Volume of wood as the trade counts it.</summary>
/// <remarks>
/// A board foot is 144 cubic inches (1 ft x 1 ft x 1 in), which is exactly 0.002359737216 cubic metres (144 x 0.0254^3).
/// The measure is taken on the sizes given, without the rounding of a grader's tally.
/// </remarks>
public static class BoardMeasure
{
    private const decimal CubicTicksPerBoardFoot = 144m * Length.TicksPerInch * Length.TicksPerInch * Length.TicksPerInch;

    /// <summary>Cubic metres in a board foot, exactly: 144 cubic inches of 25.4 mm.</summary>
    public const decimal CubicMetresPerBoardFoot = 144m * 25.4m * 25.4m * 25.4m / 1_000_000_000m;

    /// <summary>Board feet in a piece of the given size.</summary>
    public static decimal BoardFeet(Dimensions size) => CubicTicks(size) / CubicTicksPerBoardFoot;

    /// <summary>Cubic metres in a piece of the given size.</summary>
    public static decimal CubicMetres(Dimensions size) =>
        size.Thickness.Millimetres * size.Width.Millimetres * size.Length.Millimetres / 1_000_000_000m;

    private static decimal CubicTicks(Dimensions size) =>
        (decimal)size.Thickness.Ticks * size.Width.Ticks * size.Length.Ticks;
}
