using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Panels;

/// <summary>Strips of two panels on one board, side by side.</summary>
public class TwoPanelsTests
{
    [Theory]
    [InlineData(1000)]
    [InlineData(1800)]
    public void Two_panels_that_fit_side_by_side_take_one_board(int length)
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = Length.FromMillimetres(3), Surfaced = new Allowances(Length.Zero, Length.Zero, Length.Zero) },
            Stock = [],
            Design = new Design { Name = "two", Panels = [Panel("long", 900, 80), Panel("short", 850, 70)] },
            Offers = [PublishedProblems.CreateOffer("board", length, 200, 900) with { Kind = BoardKind.Solid, Species = "white-ash" }],
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditor.Audit(problem, plan));
        Assert.Equal((PlanStatus.Proved, 900), (plan.Status, plan.WoodCost.MinorUnits));
        Assert.Equal(["long", "short"], plan.Boards.SelectMany(board => board.Pieces).OfType<StripPiece>().Select(strip => strip.Panel).Order(StringComparer.Ordinal));
    }

    private static Panel Panel(string name, decimal length, decimal width) => new()
    {
        Name = name,
        Finished = new Dimensions(Length.FromMillimetres(18), Length.FromMillimetres(width), Length.FromMillimetres(length)),
        Species = ["white-ash"],
        NarrowestStrip = Length.FromMillimetres(40),
    };
}
