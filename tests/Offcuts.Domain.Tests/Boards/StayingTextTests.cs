using Xunit;

namespace Offcuts.Domain.Tests;

public class StayingTextTests
{
    private static readonly Defect Knot = new("knot", Area(10, 1, 2, 1));
    private static readonly Defect Stain = new("stain", Area(0, 0, 20, 8));

    /// <summary>The piece begins at 9 along and 1/2 across: the knot at 10 begins 1 from its end. What reaches beyond the piece is not told.</summary>
    [Fact]
    public void Places_are_measured_from_the_piece()
    {
        var piece = new Rect(Length.FromInches(9), Length.FromInches(0, 1, 2), Length.FromInches(30), Length.FromInches(4));
        Assert.Equal(
            "knot stays in it, 1\" to 3\" from its left end and 1/2\" to 1 1/2\" from its lower edge; "
            + "stain stays in it, 0\" to 11\" from its left end and 0\" to 4\" from its lower edge",
            StayingText.Of(piece, [Knot, Stain], DisplayUnit.Inch));
    }

    [Fact]
    public void A_piece_beside_a_defect_has_none() => Assert.Equal("", StayingText.Of(Area(12, 0, 10, 4), [Knot], DisplayUnit.Inch));

    private static Rect Area(int x, int y, int length, int width) =>
        new(Length.FromInches(x), Length.FromInches(y), Length.FromInches(length), Length.FromInches(width));
}
