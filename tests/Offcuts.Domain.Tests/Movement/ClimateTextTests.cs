using Xunit;

namespace Offcuts.Domain.Tests.Movement;

public class ClimateTextTests
{
    [Theory]
    [InlineData("30..60", 30, 60)]
    [InlineData(" 30 .. 60 % ", 30, 60)]
    [InlineData("25%-65%", 25, 65)]
    [InlineData("25 to 65", 25, 65)]
    [InlineData("29.5..60.5", 29.5, 60.5)]
    public void A_range_of_humidity_is_read_as_it_is_written(string text, decimal low, decimal high)
    {
        Assert.True(ClimateText.TryParseHumidity(text, out var range, out _));
        Assert.Equal((low, high), range);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("30")]
    [InlineData("..60")]
    [InlineData("30..60..80")]
    [InlineData("-30..60")]
    [InlineData("30,5..60")]
    [InlineData("dry")]
    public void What_is_no_range_says_what_to_write(string? text)
    {
        Assert.False(ClimateText.TryParseHumidity(text, out _, out var error));
        Assert.EndsWith("is no range of relative humidity: write for instance 30..60.", error, StringComparison.Ordinal);
    }

    // The scales meet at 32 F = 0 C and 212 F = 100 C, and agree at -40 (definition of the Fahrenheit scale, NIST SP 811).
    [Theory]
    [InlineData("21C", 21)]
    [InlineData("21 \u00b0c", 21)]
    [InlineData("-5.5C", -5.5)]
    [InlineData("32F", 0)]
    [InlineData("212 f", 100)]
    [InlineData("-40F", -40)]
    [InlineData("70F", 21.1)]
    public void A_temperature_is_read_in_either_scale(string text, decimal celsius)
    {
        Assert.True(ClimateText.TryParseTemperature(text, out var read, out _));
        Assert.Equal(celsius, read);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("21")]
    [InlineData("C")]
    [InlineData("21K")]
    [InlineData("warm")]
    public void What_is_no_temperature_says_what_to_write(string? text)
    {
        Assert.False(ClimateText.TryParseTemperature(text, out _, out var error));
        Assert.EndsWith("is no temperature: write for instance 21C or 70F.", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_shown_can_be_read_again()
    {
        for (var tenths = 0; tenths <= 1000; tenths += 7)
        {
            var (low, high) = (tenths / 10m, (tenths + 55) / 10m);
            Assert.True(ClimateText.TryParseHumidity(ClimateText.Humidity(low, high), out var range, out _));
            Assert.Equal((low, high), range);
            var shown = ClimateText.Temperature(low - 40);
            Assert.True(ClimateText.TryParseTemperature(shown[..shown.IndexOf(" (", StringComparison.Ordinal)], out var celsius, out _));
            Assert.Equal(low - 40, celsius);
        }

        Assert.Equal("21 C (70 F)", ClimateText.Temperature(21));
        Assert.False(ClimateText.TryParseHumidity(new string('3', 10_000), out _, out _));
    }
}
