using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class SizeRangeTests
{
    [Theory]
    [InlineData("3/4..13/16 x 2..3 x 30..31", "3/4 x 2 x 30", "13/16 x 3 x 31")]
    [InlineData("3/4 to 13/16 x 2 to 3 x 30in", "3/4 x 2 x 30", "13/16 x 3 x 30")]
    [InlineData("3/4x2..3x30", "3/4 x 2 x 30", "3/4 x 3 x 30")]
    [InlineData("18mm x 40..60 x 300", "18mm x 40mm x 300mm", "18mm x 60mm x 300mm")]
    [InlineData("3/4 x 5 x 2' .. 30\"", "3/4 x 5 x 24", "3/4 x 5 x 30")]
    public void Reads_any_side_as_a_range(string text, string least, string most)
    {
        Assert.True(SizeText.TryParseRange(text, DisplayUnit.Inch, out var from, out var to, out var error), error);
        Assert.Equal(SizeText.Parse(least, DisplayUnit.Inch), from);
        Assert.Equal(SizeText.Parse(most, DisplayUnit.Inch), to);
    }

    [Theory]
    [InlineData("3/4 x 3..2 x 30", "from the smaller to the larger")]
    [InlineData("3/4 x 2..2 x 30", "from the smaller to the larger")]
    [InlineData("3/4 x 2..3..4 x 30", "each one number or from..to")]
    [InlineData("2..3 x 30", "each one number or from..to")]
    [InlineData("3/4 x 2.. x 30", "")]
    [InlineData("3/4 x 0..2 x 30", "zero")]
    [InlineData("3/4 x 2..2 1/3 x 30", "Write 2 21/64")]
    [InlineData("3/4 x 2..3 x ", "")]
    public void Says_what_is_wrong_with_a_range(string text, string part)
    {
        Assert.False(SizeText.TryParseRange(text, DisplayUnit.Inch, out _, out _, out var error));
        Assert.Contains(part, error, StringComparison.Ordinal);
    }

    [Fact]
    public void One_size_is_no_range()
    {
        Assert.True(SizeText.TryParseRange("3/4 x 2 x 30", DisplayUnit.Inch, out var least, out var most, out _));
        Assert.Equal(SizeText.Parse("3/4 x 2 x 30", DisplayUnit.Inch), least);
        Assert.Null(most);
        Assert.Equal("3/4 x 2 x 30 in", SizeText.Format(least, most, DisplayUnit.Inch));
    }

    [Fact]
    public void What_is_printed_can_be_read_again() => Gen.Select(Gen.Int[1, 640].Array[3], Gen.Int[0, 64].Array[3]).Sample((least, more) =>
    {
        var from = Size(least);
        var to = Size([.. least.Zip(more, (a, b) => a + b)]);
        var text = SizeText.Format(from, to, DisplayUnit.Inch);
        Assert.True(SizeText.TryParseRange(text, DisplayUnit.Millimetre, out var readFrom, out var readTo, out var error), error);
        Assert.Equal((from, to), (readFrom, readTo ?? readFrom));
    });

    private static Dimensions Size(int[] sixtyFourths) =>
        new(Length.FromSixtyFourths(sixtyFourths[0]), Length.FromSixtyFourths(sixtyFourths[1]), Length.FromSixtyFourths(sixtyFourths[2]));
}
