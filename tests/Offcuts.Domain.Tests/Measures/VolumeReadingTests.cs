using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class VolumeReadingTests
{
    [Theory]
    [InlineData("0.2m3", DisplayUnit.Inch, "0.2")]
    [InlineData("0.2 m³", DisplayUnit.Inch, "0.2")]
    [InlineData(" 2 cubic metres ", DisplayUnit.Inch, "2")]
    [InlineData("1 Cubic Meter", DisplayUnit.Inch, "1")]
    // A board foot is 144 cubic inches of 25.4 mm (common practice): 0.002359737216 cubic metres.
    [InlineData("1 bd ft", DisplayUnit.Millimetre, "0.002359737216")]
    [InlineData("1bf", DisplayUnit.Millimetre, "0.002359737216")]
    [InlineData("100 board feet", DisplayUnit.Millimetre, "0.2359737216")]
    [InlineData("1 board foot", DisplayUnit.Millimetre, "0.002359737216")]
    [InlineData(".5 bd. ft.", DisplayUnit.Inch, "0.001179868608")]
    [InlineData("10", DisplayUnit.Inch, "0.02359737216")]
    [InlineData("10", DisplayUnit.Millimetre, "10")]
    public void A_volume_is_read_as_makers_write_it(string text, DisplayUnit unit, string cubicMetres)
    {
        Assert.True(VolumeReading.TryParse(text, unit, out var read, out var error), error);
        Assert.Equal(decimal.Parse(cubicMetres, System.Globalization.CultureInfo.InvariantCulture), read);
    }

    [Theory]
    [InlineData("")]
    [InlineData("much")]
    [InlineData("0 m3")]
    [InlineData("-1 m3")]
    [InlineData("0,2 m3")]
    [InlineData("1000001")]
    [InlineData("99999999999999999999999999999999999999")]
    [InlineData("2 ft")]
    public void What_is_no_volume_is_refused_with_the_way_to_mend_it(string text)
    {
        Assert.False(VolumeReading.TryParse(text, DisplayUnit.Inch, out _, out var error));
        Assert.Contains("give", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_is_read_back() => Gen.Int[1, 9_999_999].Sample(tenths =>
    {
        var volume = tenths / 10m * BoardMeasure.CubicMetresPerBoardFoot;
        Assert.True(VolumeReading.TryParse(VolumeText.OfCubicMetres(volume, DisplayUnit.Inch), DisplayUnit.Millimetre, out var read, out _));
        Assert.Equal(volume, read);
    });
}
