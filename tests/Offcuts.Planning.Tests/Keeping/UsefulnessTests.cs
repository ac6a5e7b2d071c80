using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Keeping;

/// <summary>Whether a board is of use for a design, against what a plan makes of it.</summary>
public sealed class UsefulnessTests
{
    [Fact]
    public void A_board_serves_a_design_exactly_if_a_plan_from_it_alone_makes_something()
    {
        var limits = new PlanLimits(TimeSpan.FromMilliseconds(300));
        var (serving, useless) = (0, 0);
        foreach (var seed in Enumerable.Range(9000, 40))
        {
            var problem = RandomShops.Create(seed, new ShopKind(ShopScale.Smallest, MustBuy: seed % 2 == 1, Metric: seed % 4 >= 2)) with { Offers = [] };
            foreach (var board in problem.Stock)
            {
                var plan = Planner.Solve(problem with { Stock = [board] }, limits);
                // Panels are only planned whole: a board of which just a strip can be had may stay uncut.
                var cuts = plan.Boards.Count > 0;
                var serves = Usefulness.Serves(board, problem.Design, problem.Shop);
                Assert.True(serves || !cuts, $"seed {seed}, board {board.Id}: a plan cuts it.");
                Assert.True(cuts || !serves || problem.Design.Panels.Count > 0, $"seed {seed}, board {board.Id}: no plan cuts it.");
                serving += serves ? 1 : 0;
                useless += serves ? 0 : 1;
            }
        }

        Assert.True(serving > 10 && useless > 10, $"{serving} serve, {useless} do not.");
    }

    [Fact]
    public void What_was_only_estimated_counts_less()
    {
        var board = new Board
        {
            Id = "A",
            Species = "white-ash",
            Surface = Surface.Surfaced,
            LoggedAt = DateTimeOffset.UnixEpoch,
            Size = new(Length.FromInches(0, 3, 4), Length.FromInches(4), Length.FromInches(20)),
        };
        var design = new Design { Name = "rail", Parts = [new Part { Name = "rail", Species = ["white-ash"], Finished = new(Length.FromInches(0, 3, 4), Length.FromInches(3), Length.FromInches(19)) }] };
        Assert.True(Usefulness.Serves(board, design, new Shop()));
        Assert.False(Usefulness.Serves(board with { Estimates = new Estimates(Length: true) }, design, new Shop()));
    }
}
