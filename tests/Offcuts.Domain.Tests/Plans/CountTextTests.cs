using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class CountTextTests
{
    private static readonly Part Slat = new() { Name = "Slat", Quantity = 5, Finished = SizeText.Parse("1/2 x 2 x 30in", DisplayUnit.Inch) };

    [Theory]
    [InlineData(7, 10, 8, "Slat: 7 pieces (5 to 9 will do), 8 gaps of 1 1/4\".")]
    [InlineData(7, 10, 9, "Slat: 7 pieces (5 to 9 will do), 9 gaps of about 1 7/64\", 10\" together.")]
    public void Says_the_gaps_as_a_maker_reads_them(int count, int inches, int gaps, string text) => Assert.Equal(
        text, CountText.Of(new PartCount("Slat", count, 0, new EqualGaps(Length.FromInches(inches), gaps)), Slat with { MostQuantity = 9 }, DisplayUnit.Inch));

    [Theory]
    [InlineData(0, null, "Slat: 5 pieces. No spare was to be had: what the boards leave has no room for more.")]
    [InlineData(0, ExtraSource.Waste, "Slat: 5 pieces. No spare was to be had: what the boards leave has no room for more; 'extras: leftovers' would let them be cut from leftovers.")]
    [InlineData(1, null, "Slat: 5 pieces. 1 of 2 spares: what the boards leave has no room for more.")]
    [InlineData(2, null, "Slat: 5 pieces. 2 spares besides.")]
    public void Says_whether_there_are_spares(int spares, ExtraSource? extras, string text) =>
        Assert.Equal(text, CountText.Of(new PartCount("Slat", 5, spares, null), Slat with { Spares = 2, Extras = extras }, DisplayUnit.Inch));

    [Fact]
    public void The_nearest_gap_is_off_by_at_most_half_a_step() => Gen.Select(Gen.Long[0, 4_000_000], Gen.Int[1, 200], Gen.Enum<DisplayUnit>()).Sample((ticks, number, unit) =>
    {
        var gaps = new EqualGaps(Length.FromTicks(ticks), number);
        var step = unit == DisplayUnit.Inch ? Length.TicksPerInch / 64 : Length.TicksPerMillimetre / 10;
        Assert.Equal(0, gaps.Nearest(unit).Ticks % step);
        Assert.True(Math.Abs((gaps.Nearest(unit).Ticks * number) - ticks) * 2 <= step * number);
    });
}
