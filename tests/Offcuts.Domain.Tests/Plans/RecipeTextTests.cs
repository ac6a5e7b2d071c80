using Xunit;

namespace Offcuts.Domain.Tests;

public class RecipeTextTests
{
    private static readonly Part Rail = new()
    {
        Name = "rail",
        Quantity = 6,
        Layers = 3,
        Finished = new(Length.FromInches(1, 1, 2), Length.FromInches(2), Length.FromInches(5)),
    };

    // Slices are sawn 1/8 in thicker than finished (the shop's default); three layers of 1 1/2 in are 1/2 in each.
    [Theory]
    [InlineData(1, 1, 1, false, 1, null)]
    [InlineData(1, 2, 1, false, 2, "resaw into 2, each 1 5/8\" thick")]
    [InlineData(3, 1, 1, false, 3, "mill as one, then cut into 3 of 5\"")]
    [InlineData(3, 1, 1, false, 2, "mill as one, then cut into 2 of 5\"")]
    [InlineData(1, 1, 1, true, 1, "mill at this length, then cut to 5\"")]
    [InlineData(2, 2, 1, false, 4, "resaw into 2, each 1 5/8\" thick; mill each as one, then cut into 2 of 5\"")]
    [InlineData(1, 2, 1, true, 2, "resaw into 2, each 1 5/8\" thick; mill each at this length, then cut to 5\"")]
    [InlineData(1, 1, 3, false, 1, "glue up 3 layers of 1/2\"")]
    [InlineData(1, 2, 3, false, 2, "resaw into 2, each 5/8\" thick; glue up 3 layers of 1/2\"")]
    public void Says_the_steps_after_the_blank_is_sawn_out(int inRow, int slices, int layers, bool carried, int copies, string? expected) =>
        Assert.Equal(expected, RecipeText.Of(Blank(new Recipe(inRow, slices, layers, carried), copies), Rail, new Shop()));

    [Fact]
    public void Sizes_are_those_that_the_plan_chose_and_in_the_shops_unit()
    {
        // 40 mm and 1/8 in (3.175 mm): shown to a tenth, marked as not exact.
        var shop = new Shop { Unit = DisplayUnit.Millimetre };
        var chosen = Blank(new Recipe(2, 2, 1), 4) with { Finished = new(Length.FromMillimetres(40), Length.FromMillimetres(50), Length.FromMillimetres(130)) };
        Assert.Equal("resaw into 2, each ~43.2 mm thick; mill each as one, then cut into 2 of 130 mm", RecipeText.Of(chosen, Rail, shop));
        // A turned blank's row runs along the board, so it is cut to the part's width.
        Assert.Equal("mill as one, then cut into 2 of 50 mm", RecipeText.Of(chosen with { Turned = true, Recipe = new Recipe(2, 1, 1), Copies = [new(1), new(2)] }, Rail, shop));
    }

    [Theory]
    [InlineData(new[] { 1 }, "#1")]
    [InlineData(new[] { 3, 1, 2 }, "#1..#3")]
    [InlineData(new[] { 1, 2, 4, 6, 7 }, "#1..#2, #4, #6..#7")]
    public void Copies_in_one_piece_are_named_in_runs(int[] copies, string expected) =>
        Assert.Equal(expected, RecipeText.Copies([.. copies.Select(copy => new PartCopy(copy))], layered: false));

    [Fact]
    public void Layers_are_named_by_the_copy_that_they_belong_to()
    {
        Assert.Equal("#2 layer 1", RecipeText.Copies([new(2)], layered: true));
        Assert.Equal("#1 layers 2+3, #2 layer 1", RecipeText.Copies([new(1, 2), new(1, 3), new(2)], layered: true));
    }

    private static PartPiece Blank(Recipe recipe, int copies) => new(
        default, "rail", [.. Enumerable.Range(1, copies).Select(copy => new PartCopy(copy))], Turned: false, recipe);
}
