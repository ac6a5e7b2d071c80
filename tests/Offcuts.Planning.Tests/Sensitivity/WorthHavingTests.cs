using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Sensitivity;

public class WorthHavingTests
{
    [Fact]
    public void An_offcut_for_one_rail_saves_the_board_that_is_bought_for_it()
    {
        // Three rails of 600 mm; a board of 1400 mm for 9.00 gives two of them.
        var problem = Rails(3);
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Equal(1800, plan.WoodCost.MinorUnits);
        var worth = Planner.WorthHaving(problem, plan, new PlanLimits(TimeSpan.FromSeconds(4)), 6, Planner.Solve);

        // The smallest that will do is a rail's blank, in steps of 5 mm: 612.7 x 66.35.
        Assert.Equal((900, Size(70, 615)), (worth[0].Saves.MinorUnits, worth[0].Size));
        Assert.Contains(worth, each => each.Size == Size(100, 1400) && each.Saves.MinorUnits == 900);
        Assert.All(worth, each => Assert.True(each.Estimate > Money.Zero));
    }

    [Fact]
    public void Where_boards_are_needed_in_whole_an_offcut_may_save_nothing()
    {
        // Two rails take one board however small an offcut for one of them is.
        var problem = Rails(2);
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        var worth = Planner.WorthHaving(problem, plan, new PlanLimits(TimeSpan.FromSeconds(4)), 8, Planner.Solve);
        Assert.Contains(worth, each => each.Size == Size(70, 615) && each.Saves == Money.Zero && each.Estimate > Money.Zero);
        Assert.Contains(worth, each => each.Size == Size(70, 1230) && each.Saves.MinorUnits == 900);
    }

    [Fact]
    public void A_plan_that_buys_nothing_has_nothing_to_save()
    {
        var problem = Rails(1) with { Stock = [new Board { Id = "A", Species = "white-ash", Size = Size(100, 1400), LoggedAt = default }] };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Planner.WorthHaving(problem, plan, new PlanLimits(TimeSpan.FromSeconds(1)), 6, Planner.Solve));
    }

    [Fact]
    public void No_saving_is_more_than_the_bound_leaves_to_save()
    {
        var found = 0;
        foreach (var seed in Enumerable.Range(9000, 12))
        {
            var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny) with { MustBuy = true });
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(400)));
            foreach (var each in Planner.WorthHaving(problem, plan, new PlanLimits(TimeSpan.FromMilliseconds(900)), 3, Planner.Solve))
            {
                // The same shop planned anew with the board in stock: its bound may not be above what the saving leaves.
                var board = new Board { Id = "extra", Kind = each.Kind, Species = each.Species, Size = each.Size, Surface = each.Surface, Ends = Ends.BothSound, LoggedAt = default };
                var with = Planner.Solve(problem with { Stock = [.. problem.Stock, board] }, new PlanLimits(TimeSpan.FromMilliseconds(300)));
                if (with.Missing.Count == 0 && plan.Missing.Count == 0)
                {
                    found += each.Saves > Money.Zero ? 1 : 0;
                    Assert.True((plan.Outlay - each.Saves).MinorUnits >= with.WoodBound.MinorUnits, FormattableString.Invariant($"seed {seed}: {each}"));
                }
            }
        }

        Assert.True(found > 0, "Nothing was worth having in any shop.");
    }

    private static PlanningProblem Rails(int count) => new()
    {
        Shop = new Shop { Unit = DisplayUnit.Millimetre },
        Stock = [],
        Offers = [new Offer { Id = "yard/ash", Supplier = "yard", Species = "white-ash", Thickness = Mm(25), Form = new ByThePiece(Mm(100), Mm(1400), new Money(900)) }],
        Design = new Design
        {
            Name = "frame",
            Parts = [new Part { Name = "rail", Quantity = count, Finished = new Dimensions(Mm(20), Mm(60), Mm(600)), Species = ["white-ash"] }],
        },
    };

    private static Dimensions Size(int width, int length) => new(Mm(25), Mm(width), Mm(length));

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
