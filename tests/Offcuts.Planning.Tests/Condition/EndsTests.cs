using Offcuts.Domain;
using Xunit;
using static Offcuts.Planning.Tests.Condition.Bench;

namespace Offcuts.Planning.Tests.Condition;

/// <summary>Ends and edges that are trimmed, and the ends that leftovers have.</summary>
public class EndsTests
{
    private static readonly Shop Trims = new()
    {
        EndTrimChecked = In(1.5m),
        EndTrimUnknown = In(0.75m),
        FactoryEdgeTrim = In(0.5m),
    };

    [Theory]
    [InlineData(EndState.Sound, EndState.Sound, Surface.Rough, 0)]
    [InlineData(EndState.Checked, EndState.Sound, Surface.Rough, 1.5)]
    [InlineData(EndState.Checked, EndState.Checked, Surface.Surfaced, 3)]
    [InlineData(EndState.Unknown, EndState.Sound, Surface.Rough, 0.75)]
    [InlineData(EndState.Unknown, EndState.Checked, Surface.SkipPlaned, 2.25)]
    [InlineData(EndState.Unknown, EndState.Unknown, Surface.Surfaced, 0)]
    public void A_blank_is_as_long_as_the_board_less_its_trims_and_no_longer(EndState left, EndState right, Surface surface, decimal lost)
    {
        var board = Board(Size(1, 4, 40), surface) with { Ends = new Ends(left, right) };
        // All three kinds of stock lose 1/2 in of length.
        Assert.Empty(Plan(board, Part(Size(0.5m, 3, 39.5m - lost)), Trims).Missing);
        Assert.Equal(MissingReason.TooShort, Missing(Plan(board, Part(Size(0.5m, 3, 39.625m - lost)), Trims)).Reason);
    }

    [Fact]
    public void Nothing_is_trimmed_unless_the_shop_says_so()
    {
        var board = Board(Size(1, 4, 40)) with { Ends = new Ends(EndState.Checked, EndState.Unknown) };
        Assert.Empty(Plan(board, Part(Size(0.5m, 3, 39.5m))).Missing);
    }

    [Fact]
    public void A_trimmed_end_is_waste_even_where_it_is_as_long_as_what_is_kept()
    {
        var shop = new Shop { EndTrimChecked = In(12), Keep = Size(0.25m, 2, 6) };
        var board = Board(Size(1, 4, 60)) with { Ends = new Ends(EndState.Checked, EndState.Sound) };
        var cut = Assert.Single(Plan(board, Part(Size(0.5m, 3.5m, 20)), shop).Boards);
        Assert.Contains(cut.Pieces, piece => piece is WastePiece && piece.At.X == Length.Zero && piece.At.Right == In(12) - shop.Kerf);
        Assert.All(cut.Pieces.OfType<LeftoverPiece>(), piece => Assert.True(piece.At.X >= In(12)));
    }

    /// <summary>A split through part of the width reaches beyond the trim; the part takes the whole width, so one cut at the split's end does for both.</summary>
    [Theory]
    [InlineData(EndState.Checked, EndState.Sound, 0)]
    [InlineData(EndState.Sound, EndState.Checked, 36)]
    [InlineData(EndState.Checked, EndState.Checked, 0)]
    public void A_split_in_a_trimmed_end_goes_with_the_trim_in_one_cut(EndState left, EndState right, decimal x)
    {
        var split = new Defect("split", new Rect(In(x), In(1), In(4), In(1)));
        var board = Board(Size(1, 4, 40)) with { Ends = new Ends(left, right), Defects = [split] };
        var cut = Assert.Single(Plan(board, Part(Size(0.5m, 3.75m, 33)), Trims).Boards);
        var atSplit = cut.Cuts.Where(saw => x == 0 ? saw.Kerf.X < In(5) : saw.Kerf.X > In(35)).ToList();
        Assert.Equal(x == 0 ? split.Area.Right : split.Area.X + Trims.Kerf, Assert.Single(atSplit).Kerf.Right);
    }

    /// <summary>Wood beside the split is used, so the trim needs a cut of its own.</summary>
    [Fact]
    public void Beside_a_split_the_trim_is_cut_where_it_is()
    {
        var split = new Defect("split", new Rect(Length.Zero, Length.Zero, In(20), In(1)));
        var board = Board(Size(1, 4, 40)) with { Ends = new Ends(EndState.Checked, EndState.Sound), Defects = [split] };
        var plan = Plan(board, Part(Size(0.5m, 2, 38)), Trims);
        Assert.Empty(plan.Missing);
        Assert.Contains(Assert.Single(plan.Boards).Cuts, saw => saw.Direction == FirstCut.Crosscut && saw.Kerf.Right == In(1.5m));
    }

    [Fact]
    public void A_leftover_has_the_ends_that_the_saw_or_the_board_gave_it()
    {
        var board = Board(Size(1, 4, 60)) with { Ends = new Ends(EndState.Sound, EndState.Checked) };
        var part = Part(Size(0.5m, 3.75m, 20));
        var untrimmed = Assert.Single(Assert.Single(Plan(board, part).Boards).Pieces.OfType<LeftoverPiece>());
        Assert.Equal(new Ends(EndState.Sound, EndState.Checked), untrimmed.Ends);
        var trimmed = Assert.Single(Assert.Single(Plan(board, part, Trims).Boards).Pieces.OfType<LeftoverPiece>());
        Assert.Equal(Ends.BothSound, trimmed.Ends);
        // The offcut comes back to the rack with ends that lose nothing.
        var next = Board(new Dimensions(In(1), trimmed.At.Width, trimmed.At.Length)) with { Ends = trimmed.Ends };
        Assert.Empty(Plan(next, Part(new Dimensions(In(0.5m), In(3), trimmed.At.Length - In(0.5m))), Trims).Missing);
    }

    [Fact]
    public void A_sheet_loses_its_factory_edges_unless_it_was_cut_already()
    {
        var sheet = Board(Size(0.75m, 24, 48), Surface.Surfaced) with { Kind = BoardKind.Sheet };
        Assert.Empty(Plan(sheet, Part(Size(0.75m, 23, 47)), Trims).Missing);
        Assert.Equal(MissingReason.TooNarrow, Missing(Plan(sheet, Part(Size(0.75m, 23.125m, 47)), Trims)).Reason);
        Assert.Equal(MissingReason.TooShort, Missing(Plan(sheet, Part(Size(0.75m, 23, 47.125m)), Trims)).Reason);
        Assert.Empty(Plan(sheet with { Ends = Ends.BothSound }, Part(Size(0.75m, 24, 48)), Trims).Missing);
        Assert.Empty(Plan(sheet with { Ends = new Ends(EndState.Sound, EndState.Unknown) }, Part(Size(0.75m, 23, 47.5m)), Trims).Missing);
    }

    [Fact]
    public void A_board_shorter_than_its_trims_gives_nothing()
    {
        var board = Board(Size(1, 4, 3)) with { Ends = new Ends(EndState.Checked, EndState.Checked) };
        Assert.Equal(MissingReason.TooShort, Missing(Plan(board, Part(Size(0.5m, 0.5m, 0.5m)), Trims)).Reason);
    }

    /// <summary>4/4 skip-planed to 15/16 in leaves 1/8 in to surface: 13/16 in, the thickness that 4/4 is graded at when surfaced (NHLA).</summary>
    [Fact]
    public void Skip_planed_stock_has_allowances_of_its_own()
    {
        var board = Board(Size(0.9375m, 6, 40), Surface.SkipPlaned);
        var blank = Blank(Plan(board, Part(Size(0.8125m, 3, 30))));
        Assert.Equal((In(30.5m), In(3.25m)), (blank.At.Length, blank.At.Width));
        Assert.Equal(MissingReason.WrongThickness, Missing(Plan(board, Part(Size(0.828125m, 3, 30)))).Reason);
        // Its faces are not flat yet, so it goes over the jointer.
        Assert.Equal(MissingReason.TooWideForMachines, Missing(Plan(board with { Size = Size(1, 10, 40) }, Part(Size(0.75m, 9, 30)))).Reason);
    }
}
