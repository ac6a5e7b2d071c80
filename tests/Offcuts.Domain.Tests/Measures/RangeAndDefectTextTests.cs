using Xunit;

namespace Offcuts.Domain.Tests;

public class RangeAndDefectTextTests
{
    private static readonly Dimensions Board = new(Length.FromInches(1), Length.FromInches(7), Length.FromInches(60));

    [Theory]
    [InlineData("2 to 5", 2, 5)]
    [InlineData("2..5in", 2, 5)]
    [InlineData("2 1/2 TO 5 1/2\"", 2.5, 5.5)]
    [InlineData("0..4in", 0, 4)]
    [InlineData("1..2ft", 12, 24)]
    [InlineData("50.8mm to 5in", 2, 5)]
    public void Reads_ranges(string text, decimal from, decimal to)
    {
        Assert.True(RangeText.TryParse(text, DisplayUnit.Inch, fromZero: true, out var first, out var last, out _));
        Assert.Equal((from, to), (first.Inches, last.Inches));
    }

    [Theory]
    [InlineData("5", "not a range")]
    [InlineData("5..2", "smaller to the larger")]
    [InlineData("5..5", "smaller to the larger")]
    [InlineData("5..0", "smaller to the larger")]
    [InlineData("1..2..3", "not a range")]
    [InlineData("0..2", "zero")]
    [InlineData("a..b", "not a length")]
    public void Says_what_is_wrong_with_a_range(string text, string saying)
    {
        Assert.False(RangeText.TryParse(text, DisplayUnit.Inch, fromZero: false, out _, out _, out var error));
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("split 0..4in", "split", 0, 0, 4, 7)]
    [InlineData("knot 10..12 x 1..2", "knot", 10, 1, 2, 1)]
    [InlineData("loose knot 10 to 12in x 1 to 2", "loose knot", 10, 1, 2, 1)]
    [InlineData("wax mark 0..1ft x 1..2", "wax mark", 0, 1, 12, 1)]
    [InlineData("nail 10..12 x 1..2in", "nail", 10, 1, 2, 1)]
    [InlineData("split 4in at the left end", "split", 0, 0, 4, 7)]
    [InlineData("end check 2 1/2 right end", "end check", 57.5, 0, 2.5, 7)]
    public void Reads_defects(string text, string kind, decimal x, decimal y, decimal length, decimal width)
    {
        Assert.True(DefectText.TryParse(text, Board, DisplayUnit.Inch, out var defect, out _));
        Assert.Equal(kind, defect.Kind);
        var area = defect.Area;
        Assert.Equal((x, y, length, width), (area.X.Inches, area.Y.Inches, area.Length.Inches, area.Width.Inches));
    }

    [Fact]
    public void A_unit_on_either_range_of_a_defect_holds_for_both()
    {
        Assert.True(DefectText.TryParse("knot 10..12 x 1..2in", Board, DisplayUnit.Millimetre, out var defect, out _));
        Assert.Equal(Length.FromInches(10), defect.Area.X);
        Assert.Equal("knot 10\" to 12\" along, 1\" to 2\" across", DefectText.Format(defect, DisplayUnit.Inch));
    }

    [Theory]
    [InlineData("", "not a defect")]
    [InlineData("split", "not a defect")]
    [InlineData("0..4", "not a defect")]
    [InlineData("split 4", "not a range")]
    [InlineData("split 4..5 at the left end", "not a length")]
    [InlineData("split 4..2", "smaller to the larger")]
    [InlineData("knot 1..2 x 5", "not a range")]
    public void Says_what_is_wrong_with_a_defect(string text, string saying)
    {
        Assert.False(DefectText.TryParse(text, Board, DisplayUnit.Inch, out _, out var error));
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }
}
