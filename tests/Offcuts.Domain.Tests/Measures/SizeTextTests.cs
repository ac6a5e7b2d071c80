using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class SizeTextTests
{
    [Theory]
    [InlineData("3/4 x 5 1/2 x 36", 0.75, 5.5, 36)]
    [InlineData("3/4x5 1/2x36", 0.75, 5.5, 36)]
    [InlineData("3/4\" × 5½\" × 36\"", 0.75, 5.5, 36)]
    [InlineData("3/4 X 5-1/2 X 36in", 0.75, 5.5, 36)]
    [InlineData("3/4 by 5 1/2 by 36", 0.75, 5.5, 36)]
    [InlineData("3/4 * 5.5 * 36", 0.75, 5.5, 36)]
    [InlineData("4/4 x 7 x 62in", 1, 7, 62)]
    [InlineData("5/4 x 6 x 8ft", 1.25, 6, 96)]
    [InlineData("3/4 x 5 1/2 x 3' 4 1/2\"", 0.75, 5.5, 40.5)]
    [InlineData("2x4 x 8ft", 2, 4, 96)]
    [InlineData("1x6 x 36", 1, 6, 36)]
    [InlineData("1x6x36", 1, 6, 36)]
    [InlineData("1 x 6 x 36", 1, 6, 36)]
    public void Reads_inches(string text, decimal thickness, decimal width, decimal length)
    {
        var size = SizeText.Parse(text, DisplayUnit.Inch);
        Assert.Equal((thickness, width, length), (size.Thickness.Inches, size.Width.Inches, size.Length.Inches));
    }

    [Theory]
    [InlineData("18mm x 300 x 900", 18, 300, 900)]
    [InlineData("18 x 300 x 900 mm", 18, 300, 900)]
    [InlineData("18 x 300 x 2.4m", 18, 300, 2400)]
    [InlineData("1.8 x 30 x 90cm", 18, 300, 900)]
    [InlineData("4/4 x 180 x 900mm", 25.4, 180, 900)]
    [InlineData("3/4in x 300mm x 900mm", 19.05, 300, 900)]
    public void A_unit_carries_to_the_numbers_beside_it(string text, decimal thickness, decimal width, decimal length)
    {
        foreach (var bareUnit in Enum.GetValues<DisplayUnit>())
        {
            var size = SizeText.Parse(text, bareUnit);
            Assert.Equal((thickness, width, length), (size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres));
        }
    }

    [Theory]
    [InlineData(null, "No size")]
    [InlineData("", "No size")]
    [InlineData("3/4 x 5 1/2", "2 of 3 numbers")]
    [InlineData("1 x 2 x 3 x 4", "4 of 3 numbers")]
    [InlineData("3/4 x  x 36", "No length is given")]
    [InlineData("3/4in x 300mm x 36", "write a unit on every number")]
    [InlineData("18mm x 30cm x 900", "write a unit on every number")]
    [InlineData("3/4 x 5,5 x 36", "decimal comma")]
    [InlineData("3/4 x 0 x 36", "zero")]
    [InlineData("~3/4 x 5 x 36", "rounded")]
    [InlineData("2x4 x long", "not a length")]
    [InlineData("2x4xlong", "not a length")]
    public void Says_what_is_wrong(string? text, string saying)
    {
        Assert.False(SizeText.TryParse(text, DisplayUnit.Inch, out var size, out var error));
        Assert.Equal(default, size);
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }

    [Fact]
    public void Knows_a_nominal_name_from_a_size()
    {
        Assert.True(SizeText.IsNominal("2x4x8ft"));
        Assert.False(SizeText.IsNominal("1 1/4x6 x 8ft"));
        Assert.False(SizeText.IsNominal("3/4x6x36"));
        Assert.True(SizeText.IsNominal("2x4 x 8ft"));
        Assert.False(SizeText.IsNominal("2 x 4 x 8ft"));
        Assert.False(SizeText.IsNominal("18x300 x 900"));
        Assert.False(SizeText.IsNominal(null));
    }

    // Dressed sizes: American Softwood Lumber Standard PS 20, dry, as in db/reference.
    [Theory]
    [InlineData("2x4 x 8ft", "2x4", 1.5, 3.5, 96)]
    [InlineData("2x4x8ft", "2x4", 1.5, 3.5, 96)]
    [InlineData("1x6 x 36", "1x6", 0.75, 5.5, 36)]
    [InlineData("1X6x36", "1x6", 0.75, 5.5, 36)]
    [InlineData("1x6 by 36", "1x6", 0.75, 5.5, 36)]
    [InlineData("1 x 6 x 36", null, 1, 6, 36)]
    [InlineData("2x7 x 36", null, 2, 7, 36)]
    [InlineData("3/4x5 1/2x36", null, 0.75, 5.5, 36)]
    public void Softwood_may_be_given_by_its_nominal_size_and_a_space_before_the_length_changes_nothing(
        string text, string? name, decimal thickness, decimal width, decimal length)
    {
        Assert.True(SizeText.TryParseSoftwood(text, DisplayUnit.Inch, out var size, out var nominal, out _));
        Assert.Equal((name, thickness, width, length), (nominal, size.Thickness.Inches, size.Width.Inches, size.Length.Inches));
    }

    [Fact]
    public void Says_how_a_nominal_size_was_read()
    {
        Assert.True(SizeText.TryParseSoftwood("2x4 x 8ft", DisplayUnit.Millimetre, out var size, out var nominal, out _));
        Assert.Equal("read as nominal 2x4: 1 1/2 x 3 1/2", SizeText.FormatNominal(nominal!, size));
        Assert.False(SizeText.TryParseSoftwood("2x4 x long", DisplayUnit.Inch, out _, out nominal, out var error));
        Assert.Null(nominal);
        Assert.Contains("not a length", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Prints_with_one_unit_at_the_end()
    {
        var size = SizeText.Parse("3/4 x 5 1/2 x 36", DisplayUnit.Inch);
        Assert.Equal("3/4 x 5 1/2 x 36 in", SizeText.Format(size, DisplayUnit.Inch));
        Assert.Equal("~19.1 x 139.7 x 914.4 mm", SizeText.Format(size, DisplayUnit.Millimetre));
        Assert.Equal("5 1/2 x 36 in", SizeText.FormatFace(size.Width, size.Length, DisplayUnit.Inch));
    }

    [Theory]
    [InlineData("25 x 150 x 1800 mm", "25 x 150 x 1800 mm")]
    [InlineData("3/4 x 5 1/2 x 36", "3/4 x 5 1/2 x 36 in")]
    [InlineData("25.4mm x 152.4mm x 914.4mm", "1 x 6 x 36 in")]
    [InlineData("3/4in x 150mm x 36in", "3/4 x ~5 29/32 x 36 in")]
    public void Shows_a_size_in_the_unit_in_which_it_is_exact(string written, string shown) =>
        Assert.Equal(shown, SizeText.Format(SizeText.Parse(written, DisplayUnit.Inch), DisplayUnit.Inch));

    [Fact]
    public void Reads_width_and_length_alone()
    {
        Assert.True(SizeText.TryParseFace("5 1/2 x 3ft", DisplayUnit.Inch, out var width, out var length, out _));
        Assert.Equal((5.5m, 36m), (width.Inches, length.Inches));
        Assert.False(SizeText.TryParseFace("3/4 x 5 x 36", DisplayUnit.Inch, out _, out _, out var error));
        Assert.Contains("width x length", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_printed_is_read_as_the_same_size()
    {
        var exact = Gen.Long[1, Length.MaxTicks].Select(Length.FromTicks);
        Gen.Select(exact, exact, exact, (t, w, l) => new Dimensions(t, w, l))
            .Sample(size => SizeText.Parse(SizeText.FormatExact(size), DisplayUnit.Inch) == size);
        var sixtyFourths = Gen.Long[1, 200_000].Select(Length.FromSixtyFourths);
        Gen.Select(sixtyFourths, sixtyFourths, sixtyFourths, (t, w, l) => new Dimensions(t, w, l))
            .Sample(size => SizeText.Parse(SizeText.Format(size, DisplayUnit.Inch), DisplayUnit.Millimetre) == size);
    }

    [Fact]
    public void No_text_makes_the_readers_throw() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789/ .x-'\"inmft½to"], 0, 30]).Select(Gen.Enum<DisplayUnit>()).Sample((text, unit) =>
        {
            var size = SizeText.TryParse(text, unit, out _, out var sizeError);
            var face = SizeText.TryParseFace(text, unit, out _, out _, out var faceError);
            var range = RangeText.TryParse(text, unit, fromZero: true, out var from, out var to, out var rangeError);
            var defect = DefectText.TryParse(text, new Dimensions(Length.FromInches(1), Length.FromInches(7), Length.FromInches(60)), unit, out _, out var defectError);
            return size == (sizeError is null) && face == (faceError is null) && range == (rangeError is null)
                && defect == (defectError is null) && (!range || from < to);
        }, iter: 20_000);
}
