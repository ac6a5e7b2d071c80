using Offcuts.Auditing;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests.Recipes;

/// <summary>What one board gives by resawing, in layers, and in a row; the numbers are worked by hand from the shop's defaults (common practice).</summary>
public sealed class RecipeTests
{
    private static readonly Shop Resaws = new() { ResawHeight = Length.FromInches(6) };

    /// <summary>
    /// 8/4 for 5/8: (2 + 1/16) / (5/8 + 1/8 + 1/16) = 2.0625 / 0.8125 = 2.54, so 2 slices; for 3/8: 2.0625 / 0.5625 = 3.67, so 3; for 1 1/4:
    /// 2.0625 / 1.4375 = 1.43, so 1.
    /// </summary>
    [Theory]
    [InlineData(10, 2)]
    [InlineData(6, 3)]
    [InlineData(20, 1)]
    public void A_board_as_large_as_one_blank_gives_as_many_slices_as_its_thickness_holds(int sixteenths, int slices)
    {
        // One blank: 24 1/2 x 4 1/4 with the rough allowances.
        var board = Board("A", Size(2, 0, 4, 4, 24, 8));
        var plan = Plan(Resaws, [board], Part("Slat", 5, new Dimensions(Length.FromInches(0, sixteenths, 16), Length.FromInches(4), Length.FromInches(24))));
        var piece = Assert.Single(plan.Boards.SelectMany(cut => cut.Pieces).OfType<PartPiece>());
        Assert.Equal(slices, piece.Copies.Count);
        Assert.Equal(slices, piece.Recipe.Slices);
        Assert.Equal(5 - slices, Assert.Single(plan.Missing).Quantity);
        Assert.Equal(slices > 1, plan.Warnings.Any(warning => warning.Kind == WarningKind.Resawn));
    }

    [Fact]
    public void Nothing_is_resawn_beyond_the_need_or_where_the_saw_does_not_take_the_width()
    {
        var board = Board("A", Size(2, 0, 4, 4, 24, 8));
        var two = Part("Slat", 2, new Dimensions(Length.FromInches(0, 3, 8), Length.FromInches(4), Length.FromInches(24)));
        var piece = Assert.Single(Plan(Resaws, [board], two).Boards[0].Pieces.OfType<PartPiece>());
        Assert.Equal((2, 2), (piece.Copies.Count, piece.Recipe.Slices));

        var low = Resaws with { ResawHeight = Length.FromInches(4) };
        Assert.Equal(1, Assert.Single(Plan(low, [board], two).Missing).Quantity);
        Assert.Equal(1, Assert.Single(Plan(new Shop(), [board], two).Missing).Quantity);
    }

    /// <summary>A leg 1 5/8 thick from 4/4: two layers of 13/16, each with 3/16 for milling, are just 1 in.</summary>
    [Fact]
    public void A_leg_is_face_glued_from_two_boards_that_are_thick_enough_for_half_of_it()
    {
        var leg = Part("Leg", 1, Size(1, 10, 2, 0, 20, 0)) with { Layers = 2 };
        var plan = Plan(new Shop(), [Board("A", Size(1, 0, 3, 0, 21, 0)), Board("B", Size(1, 0, 3, 0, 21, 0))], leg);
        Assert.Empty(plan.Missing);
        var lamination = Assert.Single(plan.Laminations);
        Assert.Equal(("Leg", 1, "white-ash"), (lamination.Part, lamination.Copy, lamination.Species));
        Assert.Equal([1, 2], lamination.Layers.Select(layer => layer.Layer));
        Assert.Equal([1, 2], lamination.Layers.Select(layer => layer.BoardNumber).Order());
        Assert.Contains(plan.Warnings, warning => warning.Kind == WarningKind.Laminated);

        Assert.Equal(MissingReason.TooFew, Assert.Single(Plan(new Shop(), [Board("A", Size(1, 0, 3, 0, 21, 0))], leg).Missing).Reason);
        Assert.Equal(MissingReason.WrongThickness, Assert.Single(Plan(new Shop(), [Board("A", Size(1, 0, 3, 0, 21, 0))], leg with { Layers = 1 }).Missing).Reason);
    }

    [Fact]
    public void The_layers_of_a_part_are_of_one_species()
    {
        var leg = Part("Leg", 1, Size(1, 10, 2, 0, 20, 0)) with { Layers = 2, Species = ["white-ash", "black-cherry"] };
        var cherry = Board("B", Size(1, 0, 3, 0, 21, 0)) with { Species = "black-cherry" };
        Assert.Equal(1, Assert.Single(Plan(new Shop(), [Board("A", Size(1, 0, 3, 0, 21, 0)), cherry], leg).Missing).Quantity);
        Assert.Empty(Plan(new Shop(), [Board("A", Size(1, 0, 3, 0, 21, 0)) with { Quantity = 2 }, cherry], leg).Missing);
    }

    /// <summary>Three blocks of 3 in in a row: 3 x 3 + 2 x 1/8 + 1/2 = 9 3/4 in, less than 12; four: 12 + 3/8 + 1/2 = 12 7/8 in.</summary>
    [Theory]
    [InlineData(3, 12, 0, true)]
    [InlineData(4, 12, 14, false)]
    public void Short_pieces_are_planned_as_one_blank_that_is_safe_to_mill(int quantity, int inches, int sixteenths, bool carried)
    {
        var shop = new Shop { ShortBlanks = ShortBlanks.Refuse };
        var length = Length.FromInches(inches, sixteenths, 16);
        var plan = Plan(shop, [Board("A", new Dimensions(Length.FromInches(1), Length.FromInches(2, 1, 4), length))], Part("Block", quantity, Size(0, 12, 2, 0, 3, 0)));
        var piece = Assert.Single(Assert.Single(plan.Boards).Pieces.OfType<PartPiece>());
        Assert.Equal((quantity, carried, length), (piece.Copies.Count, piece.Recipe.Carried, piece.At.Length));
        Assert.DoesNotContain(plan.Warnings, warning => warning.Kind is WarningKind.ShortForJointer or WarningKind.ShortForPlaner);
    }

    /// <summary>On a board of 8 in there is no room for a safe blank: refused, or warned of, or allowed.</summary>
    [Fact]
    public void A_board_too_short_for_a_safe_blank_serves_only_where_the_shop_lets_it()
    {
        Board[] stock = [Board("A", Size(1, 0, 3, 0, 8, 0))];
        var block = Part("Block", 1, Size(0, 12, 2, 0, 3, 0));
        var refused = Assert.Single(Plan(new Shop { ShortBlanks = ShortBlanks.Refuse }, stock, block).Missing);
        Assert.Equal((MissingReason.TooShort, Length.FromInches(12)), (refused.Reason, refused.Needed));
        Assert.Equal(2, Plan(new Shop(), stock, block).Warnings.Count);
        var allowed = Plan(new Shop { ShortBlanks = ShortBlanks.Allow }, stock, block);
        Assert.Empty(allowed.Warnings);
        Assert.Empty(allowed.Missing);
    }

    [Fact]
    public void Surfaced_stock_of_the_parts_thickness_passes_no_machine_and_may_be_short()
    {
        Board[] stock = [Board("A", Size(0, 12, 3, 0, 8, 0)) with { Surface = Surface.Surfaced }];
        Assert.Empty(Plan(new Shop { ShortBlanks = ShortBlanks.Refuse }, stock, Part("Block", 1, Size(0, 12, 2, 0, 3, 0))).Missing);
    }

    [Fact]
    public void Thick_stock_is_not_planed_away_while_there_is_thinner()
    {
        var part = Part("Rail", 2, Size(0, 12, 3, 0, 30, 0));
        foreach (var shop in new[] { new Shop(), Resaws })
        {
            var plan = Plan(shop, [Board("THICK", Size(2, 0, 8, 0, 40, 0)), Board("THIN", Size(1, 0, 8, 0, 40, 0))], part);
            Assert.Equal("THIN", Assert.Single(plan.Boards).BoardId);
        }
    }

    private static Plan Plan(Shop shop, IReadOnlyList<Board> stock, Part part)
    {
        var problem = new PlanningProblem { Shop = shop, Stock = stock, Design = new Design { Name = "one", Parts = [part] }, Today = new DateOnly(2026, 6, 1) };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Part Part(string name, int quantity, Dimensions finished) =>
        new() { Name = name, Quantity = quantity, Finished = finished, Species = ["white-ash"] };

    private static Board Board(string id, Dimensions size) => new() { Id = id, Species = "white-ash", Size = size, LoggedAt = DateTimeOffset.UnixEpoch };

    /// <summary>Inches and sixteenths of thickness, width and length.</summary>
    private static Dimensions Size(int thickness, int t16, int width, int w16, int length, int l16) =>
        new(Length.FromInches(thickness, t16, 16), Length.FromInches(width, w16, 16), Length.FromInches(length, l16, 16));
}
