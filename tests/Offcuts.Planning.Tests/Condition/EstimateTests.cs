using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;
using static Offcuts.Planning.Tests.Condition.Bench;

namespace Offcuts.Planning.Tests.Condition;

/// <summary>Boards whose sizes were only estimated are counted on for less, and the plan says to measure them first.</summary>
public class EstimateTests
{
    // Rough stock loses 1/2 in of length, 1/4 in of width and 3/16 in of thickness; a side that was estimated 1, 1/4 and 1/16 in besides.
    [Theory]
    [InlineData(false, false, false, 0.8125, 3.75, 39.5)]
    [InlineData(false, false, true, 0.8125, 3.75, 38.5)]
    [InlineData(false, true, false, 0.8125, 3.5, 39.5)]
    [InlineData(true, false, false, 0.75, 3.75, 39.5)]
    [InlineData(true, true, true, 0.75, 3.5, 38.5)]
    public void A_board_gives_what_is_sure_and_no_more(bool thickness, bool width, bool length, decimal thick, decimal wide, decimal lengthOf)
    {
        var board = Board(Size(1, 4, 40)) with { Estimates = new Estimates(thickness, width, length) };
        var plan = Plan(board, Part(Size(thick, wide, lengthOf)));
        Assert.Empty(plan.Missing);
        Assert.Equal(board.Estimates.Any, plan.Warnings.Any(warning => warning is { Kind: WarningKind.Estimated, Subject: "K7M" }));
        Assert.Equal(MissingReason.WrongThickness, Missing(Plan(board, Part(Size(thick + 0.015625m, wide, lengthOf)))).Reason);
        Assert.Equal(MissingReason.TooNarrow, Missing(Plan(board, Part(Size(thick, wide + 0.015625m, lengthOf)))).Reason);
        Assert.Equal(MissingReason.TooShort, Missing(Plan(board, Part(Size(thick, wide, lengthOf + 0.015625m)))).Reason);
    }

    [Fact]
    public void The_margin_is_the_shops()
    {
        var board = Board(Size(1, 4, 40)) with { Estimates = new Estimates(Length: true) };
        var shop = new Shop { EstimateMargin = new(In(3), default, default) };
        Assert.Empty(Plan(board, Part(Size(0.75m, 3, 36.5m)), shop).Missing);
        Assert.Equal(MissingReason.TooShort, Missing(Plan(board, Part(Size(0.75m, 3, 36.625m)), shop)).Reason);
    }

    [Fact]
    public void A_board_smaller_than_the_margin_is_not_counted_on_at_all()
    {
        var board = Board(Size(1, 4, 40)) with { Estimates = new Estimates(Length: true) };
        var plan = Plan(board, Part(Size(0.5m, 1, 2)), new Shop { EstimateMargin = new(In(12), default, default) });
        Assert.Empty(plan.Missing);
        Assert.Equal(MissingReason.NoSuchSpecies, Missing(Plan(board with { Size = Size(1, 4, 12) }, Part(Size(0.5m, 1, 2)), new Shop { EstimateMargin = new(In(12), default, default) })).Reason);
    }

    [Fact]
    public void A_sheet_is_as_thick_as_it_is_called_and_the_plan_says_to_measure_it()
    {
        var sheet = Board(Size(0.75m, 24, 48)) with { Kind = BoardKind.Sheet, Estimates = new Estimates(true, true, true) };
        var plan = Plan(sheet, Part(Size(0.75m, 23.75m, 47)));
        Assert.Empty(plan.Missing);
        Assert.Contains("measure it first", Assert.Single(PlanText.Of(plan.Warnings, DisplayUnit.Inch)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_split_at_an_estimated_end_is_taken_to_begin_earlier()
    {
        // About 40 in with a split in the last 4: it may be 39 in long and clear only to 35.
        var board = Board(Size(1, 4, 40)) with { Estimates = new Estimates(Length: true), Defects = [new Defect("split", new Rect(In(36), In(0), In(4), In(4)))] };
        Assert.Empty(Plan(board, Part(Size(0.75m, 3, 34.5m))).Missing);
        Assert.NotEmpty(Plan(board, Part(Size(0.75m, 3, 34.625m))).Missing);
    }

    [Fact]
    public void Random_estimated_boards_with_defects_make_plans_that_the_auditor_passes()
    {
        var dice = new Dice(7, metric: false);
        for (var round = 0; round < 25; round++)
        {
            var stock = Enumerable.Range(0, 6).Select(index =>
            {
                var size = new Dimensions(Length.FromInches(1), dice.Between(3, 8), dice.Between(20, 60));
                var from = Length.FromInches(dice.From(0, 18));
                var split = dice.Chance(2) ? size.Length - from : Length.FromInches(2);
                return Board(size) with
                {
                    Id = $"B{index}",
                    Estimates = new Estimates(dice.Chance(2), dice.Chance(2), dice.Chance(2)),
                    Defects = dice.Chance(2) ? [new Defect("knot", new Rect(from, Length.Zero, split, dice.Chance(2) ? size.Width : Length.FromInches(1)))] : [],
                };
            }).ToList();
            var problem = new PlanningProblem
            {
                Shop = new Shop(),
                Design = new Design { Name = "parts", Parts = [Part(Size(0.75m, 2, 16)) with { Quantity = 4 }] },
                Stock = stock,
                Today = RandomShops.Today,
            };
            Assert.Empty(Auditor.Audit(problem, Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(1), round))));
        }
    }

    [Fact]
    public void A_plan_that_counts_on_all_that_was_written_is_rejected()
    {
        var board = Board(Size(1, 4, 40));
        var part = Part(Size(0.75m, 3, 39));
        var problem = new PlanningProblem { Shop = new Shop(), Design = new Design { Name = "one part", Parts = [part] }, Stock = [board], Today = RandomShops.Today };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Auditor.Audit(problem, plan));
        var estimated = problem with { Stock = [board with { Estimates = new Estimates(Length: true) }] };
        Assert.Contains(Auditor.Audit(estimated, plan), finding => finding.Rule == AuditRule.BoardIdentity);
    }
}
