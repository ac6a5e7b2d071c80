using Xunit;

namespace Offcuts.Domain.Tests;

public class YardTextTests
{
    // Quarters are the hardwood trade's (NHLA rules); feet for whole feet are common practice at a counter.
    [Theory]
    [InlineData(BoardKind.Solid, Surface.Rough, "1", "4/4")]
    [InlineData(BoardKind.Solid, Surface.Rough, "1 1/4", "5/4")]
    [InlineData(BoardKind.Solid, Surface.Rough, "2", "8/4")]
    [InlineData(BoardKind.Solid, Surface.Rough, "1 1/8", "1 1/8\"")]
    [InlineData(BoardKind.Solid, Surface.Surfaced, "1", "1\"")]
    [InlineData(BoardKind.Sheet, Surface.Surfaced, "3/4", "3/4\"")]
    public void Thickness_is_told_in_quarters_where_a_yard_does(BoardKind kind, Surface surface, string thickness, string expected) =>
        Assert.Equal(expected, YardText.Thickness(kind, surface, LengthText.Parse(thickness, DisplayUnit.Inch), DisplayUnit.Inch));

    [Theory]
    [InlineData("96in", true, DisplayUnit.Inch, "at least 5\" wide and 8 ft long")]
    [InlineData("42in", false, DisplayUnit.Inch, "5\" wide, 42\" long")]
    [InlineData("96in", false, DisplayUnit.Millimetre, "127 mm wide, 2438.4 mm long")]
    public void Width_and_length_are_what_to_look_for(string length, bool isRandom, DisplayUnit unit, string expected) =>
        Assert.Equal(expected, YardText.Face(LengthText.Parse("5in", unit), LengthText.Parse(length, unit), isRandom, unit));
}
