using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests.Keeping;

public sealed class ClearPartTests
{
    private static readonly Dimensions Piece = new(Length.FromInches(1), Length.FromInches(6), Length.FromInches(20));

    [Fact]
    public void Without_defects_it_is_the_piece() => Assert.Equal(Piece, ClearPart.Of(Piece, [], KeepSizes.From(Piece)));

    /// <summary>A knot from 12 to 13 in of the length and from 2 in up: before it 12 x 6 in (72 square inches) are clear, below it 20 x 2 in (40).</summary>
    [Theory]
    [InlineData(0, 0, 12, 6)]
    [InlineData(12, 6, 12, 6)]
    [InlineData(15, 2, 20, 2)]
    [InlineData(20, 6, 12, 6)]
    public void It_is_the_largest_that_is_kept_or_else_the_largest(int keptLength, int keptWidth, int length, int width)
    {
        var knot = new Defect("knot", new Rect(Length.FromInches(12), Length.FromInches(2), Length.FromInches(1), Length.FromInches(4)));
        var clear = ClearPart.Of(Piece, [knot], KeepSizes.From(new(Length.Zero, Length.FromInches(keptWidth), Length.FromInches(keptLength))));
        Assert.Equal((length, width), ((int)clear.Length.Inches, (int)clear.Width.Inches));
    }

    [Fact]
    public void Where_defects_cover_it_nothing_is_left()
    {
        var rot = new Defect("rot", new Rect(Length.Zero, Length.Zero, Piece.Length, Piece.Width));
        Assert.Equal((Length.Zero, Length.Zero), (ClearPart.Of(Piece, [rot], KeepSizes.From(Piece)).Length, ClearPart.Of(Piece, [rot], KeepSizes.From(Piece)).Width));
    }
}
