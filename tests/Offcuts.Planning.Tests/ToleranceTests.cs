using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Parts with tolerances, on a board of which the results can be reckoned by hand.</summary>
public class ToleranceTests
{
    /// <summary>
    /// A board 300 x 109 with a kerf of 3 and no allowances: two slats side by side share 106 of its width and take its whole length, though
    /// 50 x 290 each would do.
    /// </summary>
    [Fact]
    public void Pieces_grow_into_what_would_be_waste()
    {
        var plan = Solve(Slat(new(Mm(20), Mm(50), Mm(290)), new(Mm(20), Mm(60), Mm(300))), quantity: 2, Board(20, 109, 300, Surface.Surfaced));
        var sizes = plan.Boards[0].Pieces.OfType<PartPiece>().Select(piece => piece.Finished!.Value).ToList();
        Assert.Equal(2, sizes.Count);
        Assert.All(sizes, size => Assert.Equal(Mm(300), size.Length));
        Assert.Equal(Mm(106), sizes[0].Width + sizes[1].Width);
        Assert.DoesNotContain(plan.Boards[0].Pieces, piece => piece is WastePiece);
    }

    [Fact]
    public void Nothing_grows_beyond_its_range_or_into_a_leftover()
    {
        var plan = Solve(Slat(new(Mm(20), Mm(50), Mm(290)), new(Mm(20), Mm(60), Mm(320))), quantity: 1, Board(20, 50, 600, Surface.Surfaced));
        Assert.Equal(new(Mm(20), Mm(50), Mm(290)), Assert.Single(plan.Boards[0].Pieces.OfType<PartPiece>()).Finished);
        Assert.Equal(Mm(307), Assert.Single(plan.Boards[0].Pieces.OfType<LeftoverPiece>()).At.Length);
    }

    [Theory]
    [InlineData(22, 22)]
    [InlineData(18, 18)]
    public void A_surfaced_board_within_the_range_is_not_planed(int board, int finished)
    {
        var plan = Solve(Slat(new(Mm(18), Mm(50), Mm(290)), new(Mm(22), Mm(50), Mm(290))), quantity: 1, Board(board, 50, 290, Surface.Surfaced));
        Assert.Equal(PlanStatus.Proved, plan.Status);
        Assert.Equal(Mm(finished), Assert.Single(plan.Boards[0].Pieces.OfType<PartPiece>()).Finished!.Value.Thickness);
    }

    [Fact]
    public void Without_the_range_that_board_does_not_serve() =>
        Assert.Equal(MissingReason.WrongThickness, Assert.Single(Solve(
            Slat(new(Mm(21), Mm(50), Mm(290)), null), quantity: 1, Board(22, 50, 290, Surface.Surfaced)).Missing).Reason);

    private static Plan Solve(Part part, int quantity, Board board)
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop
            {
                Kerf = Mm(3),
                Rough = new Allowances(Length.Zero, Length.Zero, Mm(5)),
                Surfaced = new Allowances(Length.Zero, Length.Zero, Mm(2)),
                Keep = new Dimensions(Mm(5), Mm(40), Mm(300)),
            },
            Design = new Design { Name = "slats", Parts = [part with { Quantity = quantity }] },
            Stock = [board],
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Part Slat(Dimensions least, Dimensions? most) => new() { Name = "slat", Finished = least, Most = most, Species = ["white-ash"] };

    private static Board Board(int thickness, int width, int length, Surface surface) => new()
    {
        Id = "A1",
        Species = "white-ash",
        Size = new(Mm(thickness), Mm(width), Mm(length)),
        Surface = surface,
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
