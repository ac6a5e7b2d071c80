using Offcuts.Auditing;
using Offcuts.Domain;
using Xunit;
using static Offcuts.Planning.Tests.Defects.DefectBoards;

namespace Offcuts.Planning.Tests.Defects;

/// <summary>What is cut from boards with defects.</summary>
public class DefectTests
{
    private static readonly Defect Knot = Defect("knot", 400, 80, 200, 40);

    [Fact]
    public void A_board_with_a_knot_in_the_middle_gives_parts_from_both_ends_and_from_beside_it()
    {
        var board = Assert.Single(Solve(Problem(1000, 200, [Knot], Part("end", 390, 190, 2), Part("beside", 190, 75, 2))).Boards);
        var parts = board.Pieces.OfType<PartPiece>().Select(piece => piece.At).ToList();
        Assert.Equal(4, parts.Count);
        Assert.Contains(parts, at => at.Right <= Knot.Area.X);
        Assert.Contains(parts, at => at.X >= Knot.Area.Right);
        Assert.Contains(parts, at => at.Top <= Knot.Area.Y && at.Right > Knot.Area.X && at.X < Knot.Area.Right);
        Assert.Contains(parts, at => at.Y >= Knot.Area.Top && at.Right > Knot.Area.X && at.X < Knot.Area.Right);
    }

    [Fact]
    public void Long_parts_go_past_the_knot_on_both_sides()
    {
        var board = Assert.Single(Solve(Problem(1000, 200, [Knot], Part("rail", 990, 75, 2))).Boards);
        Assert.Equal(2, board.Pieces.OfType<PartPiece>().Count());
    }

    [Fact]
    public void Each_area_is_cut_in_its_own_direction()
    {
        // Before a split right across: two long rails side by side, then a short one; behind it three crosscut sections of two.
        var split = Defect("split", 500, 0, 10, 200);
        var board = Assert.Single(Solve(Problem(1013, 200, [split], Part("long", 500, 98, 2), Part("short", 165, 98, 6))).Boards);
        Assert.Equal(8, board.Pieces.OfType<PartPiece>().Count());
    }

    [Fact]
    public void A_cut_along_a_defect_runs_in_it_and_takes_no_sound_wood()
    {
        // 400 before the defect, 400 behind it, exactly.
        var wide = Solve(Problem(803, 100, [Defect("split", 400, 0, 3, 100)], Part("part", 400, 100, 2)));
        Assert.Empty(wide.Missing);

        // A hair crack costs a whole kerf all the same.
        var thin = Solve(Problem(803, 100, [Defect("crack", 400, 0, 1, 100)], Part("part", 400, 100, 2)));
        Assert.Empty(thin.Missing);
        Assert.Equal(1, Solve(Problem(802, 100, [Defect("crack", 400, 0, 1, 100)], Part("part", 400, 100, 2))).Missing.Sum(part => part.Quantity));
    }

    [Theory]
    [InlineData("Knots, sound", 0)]
    [InlineData("knot with a nail", 1)]
    [InlineData("split", 1)]
    public void A_part_lies_over_what_it_tolerates_and_over_nothing_else(string kind, int missing)
    {
        var defect = Defect(kind, 450, 80, 30, 30);
        var plan = Solve(Problem(1000, 200, [defect], Part("shelf", 990, 190, 1, "knot")));
        Assert.Equal(missing, plan.Missing.Sum(part => part.Quantity));
    }

    [Fact]
    public void A_hundred_defects_are_planned_around()
    {
        var defects = Enumerable.Range(0, 100).Select(at => Defect("worm hole", 20 + (at * 7 % 400), at * 37 % 190, 2, 2)).ToList();
        var plan = Solve(Problem(1000, 200, defects, Part("part", 500, 190)));
        Assert.Empty(plan.Missing);
    }

    private static Plan Solve(PlanningProblem problem)
    {
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }
}
