using Xunit;

namespace Offcuts.Domain.Tests;

public class NominalSizesTests
{
    // American Softwood Lumber Standard PS 20, minimum dressed sizes, dry; as reproduced in an engineering reference table.
    [Theory]
    [InlineData("1x2", "3/4", "1 1/2")]
    [InlineData("1x3", "3/4", "2 1/2")]
    [InlineData("1x4", "3/4", "3 1/2")]
    [InlineData("1x6", "3/4", "5 1/2")]
    [InlineData("1x8", "3/4", "7 1/4")]
    [InlineData("1x10", "3/4", "9 1/4")]
    [InlineData("1x12", "3/4", "11 1/4")]
    [InlineData("1x7", "3/4", "6 1/2")]
    [InlineData("1 1/4x6", "1", "5 1/2")]
    [InlineData("5/4x6", "1", "5 1/2")]
    [InlineData("2x2", "1 1/2", "1 1/2")]
    [InlineData("2x4", "1 1/2", "3 1/2")]
    [InlineData("2 X 6", "1 1/2", "5 1/2")]
    [InlineData("2x8", "1 1/2", "7 1/4")]
    [InlineData("2x10", "1 1/2", "9 1/4")]
    [InlineData("2x12", "1 1/2", "11 1/4")]
    [InlineData("4x4", "3 1/2", "3 1/2")]
    public void Softwood_is_dressed_to_the_standard(string nominal, string thickness, string width)
    {
        Assert.True(NominalSizes.TryDressed(nominal, out var dressedThickness, out var dressedWidth));
        Assert.Equal((Inches(thickness), Inches(width)), (dressedThickness, dressedWidth));
    }

    [Theory]
    [InlineData("2x7")]
    [InlineData("2x9")]
    [InlineData("3x5x8")]
    [InlineData("18x300")]
    [InlineData("2")]
    [InlineData("x")]
    [InlineData("")]
    public void What_the_standard_does_not_list_is_no_nominal_size(string nominal) =>
        Assert.False(NominalSizes.TryDressed(nominal, out _, out _));

    // NHLA rough and surfaced (S2S) thicknesses; 7/4 and 10/4 follow the rule but are from memory.
    [Theory]
    [InlineData("3/8", "3/16", 4.76)]
    [InlineData("1/2", "5/16", 7.94)]
    [InlineData("5/8", "7/16", 11.11)]
    [InlineData("3/4", "9/16", 14.29)]
    [InlineData("4/4", "13/16", 20.64)]
    [InlineData("5/4", "1 1/16", 26.99)]
    [InlineData("6/4", "1 5/16", 33.34)]
    [InlineData("7/4", "1 1/2", 38.10)]
    [InlineData("8/4", "1 3/4", 44.45)]
    [InlineData("10/4", "2 1/4", 57.15)]
    [InlineData("12/4", "2 3/4", 69.85)]
    [InlineData("16/4", "3 3/4", 95.25)]
    public void Hardwood_is_surfaced_to_the_grading_rules(string rough, string surfaced, decimal millimetres)
    {
        var found = NominalSizes.Surfaced(Inches(rough));
        Assert.Equal(Inches(surfaced), found);
        Assert.Equal(millimetres, decimal.Round(found!.Value.Millimetres, 2, MidpointRounding.AwayFromZero));
    }

    // The rule behind the table: 3/16 in off up to 6/4, 1/4 in off above.
    [Fact]
    public void Surfacing_takes_3_16_up_to_6_4_and_a_quarter_above()
    {
        for (var quarters = 4; quarters <= 16; quarters++)
        {
            var rough = Length.FromInches(0, quarters, 4);
            if (NominalSizes.Surfaced(rough) is { } surfaced)
            {
                Assert.Equal(quarters <= 6 ? Length.FromInches(0, 3, 16) : Length.FromInches(0, 1, 4), rough - surfaced);
            }
        }
    }

    [Fact]
    public void Five_quarter_stock_is_never_11_16() => Assert.NotEqual(Inches("11/16"), NominalSizes.Surfaced(Inches("5/4")));

    private static Length Inches(string text) => LengthText.Parse(text, DisplayUnit.Inch);
}
