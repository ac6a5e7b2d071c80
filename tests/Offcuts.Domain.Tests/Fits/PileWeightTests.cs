using Xunit;

namespace Offcuts.Domain.Tests;

public class PileWeightTests
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    // Worked out by hand: s = (0.3 + 0.7 l / 96) (0.5 + 0.5 w / 8) with l and w at most 96 and 8 in, and the weight (2 - s) (1 + y / 3).
    [Theory]
    [InlineData("1 x 8 x 96", 0, 1.0)]
    [InlineData("1 x 12 x 120", 0, 1.0)]
    [InlineData("1 x 4 x 48", 0, 1.5125)]
    [InlineData("1 x 4 x 48", 1095, 3.025)]
    [InlineData("1 x 8 x 96", 365, 1.3333)]
    [InlineData("1 x 8 x 96", 4000, 2.0)]
    [InlineData("1 x 8 x 96", -30, 1.0)]
    public void Old_and_awkward_pieces_count_more(string size, int days, double expected)
    {
        var board = new Board
        {
            Id = "K7M",
            Species = "white-ash",
            Size = SizeText.Parse(size, DisplayUnit.Inch),
            LoggedAt = new DateTimeOffset(Today.AddDays(-days), TimeOnly.MinValue, TimeSpan.Zero),
        };
        Assert.Equal((decimal)expected, PileWeight.Of(board, Today), 4);
    }
}
