using System.Globalization;
using Xunit;

namespace Offcuts.Domain.Tests;

public sealed class WorthTextTests
{
    [Theory]
    [InlineData("8.26", "3.51", "Uses up wood worth 8.26; no plan for this money can use up less than 3.51.")]
    [InlineData("8.26", "8.26", "Uses up wood worth 8.26, the least that any plan for this money can.")]
    [InlineData("0", "0", "Uses up wood worth 0, the least that any plan for this money can.")]
    [InlineData("0.05", "-24.10", "Uses up wood worth 0.05; no plan for this money can leave more than 24.10 beyond what it cuts up.")]
    [InlineData("-2.69", "-5.34", "Leaves wood worth 2.69 more than it cuts up; no plan for this money can leave more than 5.34 more.")]
    [InlineData("-2.69", "-2.69", "Leaves wood worth 2.69 more than it cuts up, the most that any plan for this money can.")]
    public void What_is_used_up_stands_beside_the_least(string used, string bound, string text) => Assert.Equal(text, WorthText.Of(
        decimal.Parse(used, CultureInfo.InvariantCulture), decimal.Parse(bound, CultureInfo.InvariantCulture), amount => amount.ToString(CultureInfo.InvariantCulture)));
}
