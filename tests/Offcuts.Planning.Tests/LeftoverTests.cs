using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>What a plan leaves of the boards it cuts.</summary>
public class LeftoverTests
{
    /// <summary>Two narrow parts side by side at one end leave one wide piece; ripped off along the board they leave narrow ones.</summary>
    [Fact]
    public void What_is_left_of_a_board_stays_in_one_piece()
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop(),
            Design = new Design
            {
                Name = "two rails",
                Parts = [new Part { Name = "Rail", Quantity = 2, Finished = Inches(2, 19), Species = ["white-ash"] }],
            },
            Stock =
            [
                new Board
                {
                    Id = BoardIds.FromNumber(1), Species = "white-ash", Size = Inches(6, 36), Surface = Surface.Surfaced,
                    LoggedAt = DateTimeOffset.UnixEpoch,
                },
            ],
            Offers = [],
            Rates = new WorthRates(new Money(600), new Dictionary<string, Money>()),
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        var leftover = Assert.Single(Assert.Single(plan.Boards).Pieces.OfType<LeftoverPiece>(), piece => piece.At.Width == problem.Stock[0].Size.Width);
        Assert.True(leftover.At.Length > Length.FromInches(15), $"Only {leftover.At.Length} are left.");
    }

    private static Dimensions Inches(long width, long length) =>
        new(Length.FromInches(0, 3, 4), Length.FromInches(width), Length.FromInches(length));
}
