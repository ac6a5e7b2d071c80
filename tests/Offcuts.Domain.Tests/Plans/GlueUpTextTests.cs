using Xunit;

namespace Offcuts.Domain.Tests;

public class GlueUpTextTests
{
    [Theory]
    [InlineData(new[] { 12 }, null)]
    [InlineData(new[] { 12, 12 }, "2 sub-panels, each 12\" wide")]
    [InlineData(new[] { 12, 10 }, "2 sub-panels, 12\" and 10\" wide")]
    [InlineData(new[] { 12, 12, 8 }, "3 sub-panels, 12\", 12\" and 8\" wide")]
    public void Sub_panels_are_told_with_their_widths(int[] inches, string? said) =>
        Assert.Equal(said, GlueUpText.SubPanels([.. inches.Select(each => Length.FromInches(each))], DisplayUnit.Inch));
}
