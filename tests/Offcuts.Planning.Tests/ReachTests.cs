using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>How hard it is to get at a board counts in the plan's handling, but never against money.</summary>
public class ReachTests
{
    [Theory]
    [InlineData(Reach.Behind, Reach.Easy, "B")]
    [InlineData(Reach.Easy, Reach.Behind, "A")]
    [InlineData(Reach.Buried, Reach.Behind, "B")]
    [InlineData(Reach.Behind, Reach.Buried, "A")]
    public void Of_two_boards_alike_the_one_at_hand_is_taken(Reach first, Reach second, string taken)
    {
        var plan = Solve(first, second, Board("A", "left", 40), Board("B", "right", 40));
        Assert.Equal(taken, Assert.Single(plan.Boards).BoardId);
    }

    /// <summary>The short board is the better fit, by less than a board foot is worth: that is what a buried board counts more.</summary>
    [Theory]
    [InlineData(Reach.Easy, "short")]
    [InlineData(Reach.Buried, "long")]
    public void A_better_fit_is_left_where_a_stack_lies_on_it(Reach reach, string taken)
    {
        var plan = Solve(reach, Reach.Easy, Board("short", "left", 30), Board("long", "right", 44));
        Assert.Equal(taken, Assert.Single(plan.Boards).BoardId);
    }

    [Fact]
    public void What_is_buried_is_dug_out_before_anything_is_bought()
    {
        var offer = new Offer
        {
            Id = "yard/ash",
            Supplier = "yard",
            Species = "white-ash",
            Surface = Surface.Surfaced,
            Thickness = Length.FromInches(0, 3, 4),
            Form = new ByThePiece(Length.FromInches(5), Length.FromInches(30), new Money(1)),
        };
        var plan = Planner.Solve(Problem(Reach.Buried, Reach.Easy, Board("A", "left", 96)) with { Offers = [offer] }, PlanLimits.Default);
        Assert.Equal(("A", Money.Zero), (Assert.Single(plan.Boards).BoardId, plan.WoodCost));
    }

    [Fact]
    public void A_place_of_which_nothing_is_said_is_easy()
    {
        var problem = Problem(Reach.Buried, Reach.Behind);
        Assert.Equal(
            [Reach.Buried, Reach.Behind, Reach.Easy, Reach.Easy],
            new[] { "left", "right", "Left", null }.Select(place => problem.ReachOf(Board("A", place, 30))));
    }

    private static Plan Solve(Reach left, Reach right, params Board[] stock)
    {
        var problem = Problem(left, right, stock);
        var plan = Planner.Solve(problem, PlanLimits.Default);
        Assert.Empty(Auditor.Audit(problem, plan));
        Assert.Equal(PlanStatus.Proved, plan.Status);
        return plan;
    }

    private static PlanningProblem Problem(Reach left, Reach right, params Board[] stock) => new()
    {
        Shop = new Shop(),
        Design = new Design
        {
            Name = "rail",
            Parts = [new Part { Name = "Rail", Finished = new(Length.FromInches(0, 3, 4), Length.FromInches(4), Length.FromInches(28)), Species = ["white-ash"] }],
        },
        Stock = stock,
        Reaches = new Dictionary<string, Reach> { ["left"] = left, ["right"] = right },
        Today = RandomShops.Today,
    };

    private static Board Board(string id, string? place, long length) => new()
    {
        Id = id,
        Species = "white-ash",
        Size = new(Length.FromInches(0, 3, 4), Length.FromInches(5), Length.FromInches(length)),
        Surface = Surface.Surfaced,
        Place = place,
        LoggedAt = new DateTimeOffset(RandomShops.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
    };
}
