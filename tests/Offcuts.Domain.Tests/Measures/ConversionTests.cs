using CsCheck;
using UnitsNet;
using Xunit;

namespace Offcuts.Domain.Tests;

// The general-purpose units library UnitsNet and published figures against our exact lengths and volumes.
public class ConversionTests
{
    [Fact]
    public void Inches_and_millimetres_agree_with_a_units_library() =>
        Gen.Long[1, Length.MaxTicks].Sample(ticks =>
        {
            var length = Length.FromTicks(ticks);
            var theirs = UnitsNet.Length.FromMillimeters((double)length.Millimetres);
            return Near(theirs.Inches, length.Inches) && Near(theirs.Feet, length.Inches / 12) && Near(theirs.Centimeters, length.Millimetres / 10);
        });

    [Theory]
    [InlineData("5/8in")]
    [InlineData("3ft")]
    [InlineData("12.3cm")]
    [InlineData("1.875m")]
    [InlineData("7.4mm")]
    public void What_is_read_in_any_unit_agrees_with_a_units_library(string text)
    {
        var (number, theirs) = text switch
        {
            "5/8in" => (0.625, UnitsNet.Units.LengthUnit.Inch),
            "3ft" => (3, UnitsNet.Units.LengthUnit.Foot),
            "12.3cm" => (12.3, UnitsNet.Units.LengthUnit.Centimeter),
            "1.875m" => (1.875, UnitsNet.Units.LengthUnit.Meter),
            _ => (7.4, UnitsNet.Units.LengthUnit.Millimeter),
        };
        var ours = LengthText.Parse(text, DisplayUnit.Inch);
        Assert.True(Near(new UnitsNet.Length(number, theirs).Millimeters, ours.Millimetres));
    }

    // International yard and pound agreement, 1959: an inch is 25.4 mm exactly.
    [Theory]
    [InlineData("1/64", 0.396875)]
    [InlineData("1/32", 0.79375)]
    [InlineData("1/16", 1.5875)]
    [InlineData("3/32", 2.38125)]
    [InlineData("1/8", 3.175)]
    [InlineData("3/16", 4.7625)]
    [InlineData("1/4", 6.35)]
    [InlineData("3/4", 19.05)]
    [InlineData("13/16", 20.6375)]
    [InlineData("1-1/16", 26.9875)]
    [InlineData("1-5/16", 33.3375)]
    [InlineData("1-1/2", 38.1)]
    [InlineData("1-3/4", 44.45)]
    [InlineData("3-1/2", 88.9)]
    [InlineData("5-1/2", 139.7)]
    [InlineData("7-1/4", 184.15)]
    [InlineData("9-1/4", 234.95)]
    [InlineData("11-1/4", 285.75)]
    [InlineData("1 ft", 304.8)]
    public void Inches_are_exact_in_millimetres(string text, decimal millimetres) =>
        Assert.Equal(millimetres, LengthText.Parse(text, DisplayUnit.Inch).Millimetres);

    // Worked examples of board-foot texts (glossaries and a training manual); the last counts a 2x4 by its nominal size.
    [Theory]
    [InlineData("1 x 3 x 8ft", 2)]
    [InlineData("1 x 6 x 96in", 4)]
    [InlineData("1 x 12 x 10ft", 10)]
    [InlineData("4/4 x 8 x 8ft", 5.33)]
    [InlineData("2 x 4 x 8ft", 5.33)]
    public void Board_feet_agree_with_worked_examples(string size, decimal boardFeet) =>
        Assert.Equal(boardFeet, decimal.Round(BoardMeasure.BoardFeet(SizeText.Parse(size, DisplayUnit.Inch)), 2));

    [Fact]
    public void A_board_foot_is_exactly_0_002359737216_cubic_metres()
    {
        var foot = SizeText.Parse("1 x 12 x 12", DisplayUnit.Inch);
        Assert.Equal(1m, BoardMeasure.BoardFeet(foot));
        Assert.Equal(0.002359737216m, BoardMeasure.CubicMetres(foot));
        Assert.True(Near(Volume.FromBoardFeet(1).CubicMeters, BoardMeasure.CubicMetres(foot)));
        Assert.Equal(423.776m, decimal.Round(BoardMeasure.BoardFeet(foot) / BoardMeasure.CubicMetres(foot), 3));
    }

    private static bool Near(double theirs, decimal ours) => Math.Abs(theirs - (double)ours) <= 1e-12 * Math.Max(1, Math.Abs(theirs));
}
