using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BoardShapeTests
{
    [Theory]
    [InlineData(BoardKind.Solid, "36 x 5 1/2 x 3/4", "did you mean 3/4 x 5 1/2 x 36 in?")]
    [InlineData(BoardKind.Solid, "2 x 1 1/2 x 30", "did you mean 1 1/2 x 2 x 30 in?")]
    [InlineData(BoardKind.Solid, "12 1/2 x 13 x 30", "at most 12\" thick")]
    [InlineData(BoardKind.Solid, "4/4 x 5' 6 x 8'", "at most 48\" wide")]
    [InlineData(BoardKind.Sheet, "4 1/4 x 24 x 48", "at most 4\" thick")]
    public void Says_what_no_board_can_be_and_how_to_mend_it(BoardKind kind, string text, string saying)
    {
        var size = SizeText.Parse(text, DisplayUnit.Inch);
        Assert.Contains(saying, BoardShape.ThicknessFault(kind, size) ?? BoardShape.WidthFault(kind, size), StringComparison.Ordinal);
        var board = new NewBoard { Kind = kind, Species = "x", Size = size };
        Assert.Equal("#/size", Assert.Single(BoardRules.Check(board)).Pointer);
    }

    [Theory]
    [InlineData(BoardKind.Solid, "4 x 4 x 4")]
    [InlineData(BoardKind.Solid, "12 x 48 x 96")]
    [InlineData(BoardKind.Sheet, "4 x 60 x 120")]
    [InlineData(BoardKind.Sheet, "3/4 x 1/2 x 96")]
    public void Takes_what_is_just_possible(BoardKind kind, string text)
    {
        var size = SizeText.Parse(text, DisplayUnit.Inch);
        Assert.Null(BoardShape.ThicknessFault(kind, size) ?? BoardShape.WidthFault(kind, size));
    }

    // The order of the sides that is proposed is one that is taken.
    [Fact]
    public void Any_lumber_is_taken_with_its_sides_in_order()
    {
        var side = Gen.Long[1, 48 * Length.TicksPerInch].Select(Length.FromTicks);
        Gen.Select(side, side, side).Sample((a, b, c) =>
        {
            Length[] sides = [a, b, c];
            Array.Sort(sides);
            var fault = BoardShape.ThicknessFault(BoardKind.Solid, new(sides[0], sides[1], sides[2]));
            return (fault is null) == (sides[0] <= BoardShape.ThickestSolid);
        });
    }
}
