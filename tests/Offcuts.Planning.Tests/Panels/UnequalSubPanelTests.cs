using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Panels;

/// <summary>Panels wider than the planer, of boards that each give one strip as it is: what the sub-panels can be is plain to see.</summary>
public class UnequalSubPanelTests
{
    [Theory]
    [InlineData(130, 0, "110 130")]
    [InlineData(120, 1000, "120 120")]
    public void A_sub_panel_may_be_narrower_where_another_may_be_wider(int planer, int cost, string widths)
    {
        // Of 130 and 110 mm come 240 mm if the planer takes 130 mm; two halves of 120 mm take a board more.
        var plan = Plan(planer, panel: 240, strips: (110, 130), stock: [130, 110]);
        Assert.Equal(cost, plan.WoodCost.MinorUnits);
        Assert.Equal(widths, Widths(plan));
    }

    [Fact]
    public void Three_sub_panels_may_all_differ()
    {
        // 130 + 125 + 105 mm are 360 mm. A third of it, 120 mm, could not be made of the 105 mm board alone.
        var plan = Plan(planer: 130, panel: 360, strips: (100, 130), stock: [105, 130, 125]);
        Assert.Equal(PlanStatus.Proved, plan.Status);
        Assert.Equal(0, plan.WoodCost.MinorUnits);
        Assert.Equal("105 125 130", Widths(plan));
    }

    [Fact]
    public void Wood_that_suffices_for_the_width_alone_may_still_not_do()
    {
        // 85 + 85 + 50 mm are 220 mm, and 215 mm are needed. But of 85 + 50 mm in one sub-panel only 125 mm count, which makes 210 mm.
        var plan = Plan(planer: 125, panel: 215, strips: (45, 85), stock: [85, 85, 50]);
        Assert.True(plan.WoodCost.MinorUnits > 0, Widths(plan));
    }

    [Fact]
    public void Equal_sub_panels_stay_equal_where_nothing_is_gained()
    {
        var plan = Plan(planer: 130, panel: 240, strips: (60, 60), stock: [60, 60, 60, 60]);
        Assert.Equal("120 120", Widths(plan));
    }

    [Fact]
    public void Random_panels_that_a_narrow_planer_divides_pass_the_auditor()
    {
        var (divided, unequal) = (0, 0);
        foreach (var seed in Enumerable.Range(1, 120))
        {
            var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Smallest));
            problem = problem with { Shop = problem.Shop with { PlanerWidth = Length.FromMillimetres(120 + (seed % 60)), SeamAllowance = Length.FromMillimetres(seed % 4) } };
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(40)));
            var findings = Auditor.Audit(problem, plan);
            Assert.True(findings.Count == 0, FormattableString.Invariant($"seed {seed}: {string.Join("; ", findings)}"));
            var panels = plan.GlueUps.Where(glueUp => glueUp.SubPanels.Count > 1).ToList();
            divided += panels.Count;
            unequal += panels.Count(glueUp => glueUp.SubPanels.Max(sub => sub.NeededWidth.Ticks) - glueUp.SubPanels.Min(sub => sub.NeededWidth.Ticks) > 1);
        }

        Assert.True(divided > 10 && unequal > 5, FormattableString.Invariant($"{divided} panels are divided, {unequal} of them into unequal sub-panels."));
    }

    private static string Widths(Plan plan) =>
        string.Join(' ', Assert.Single(plan.GlueUps).SubPanels.Select(sub => sub.NeededWidth.Millimetres).Order().Select(width => FormattableString.Invariant($"{width:0.#}")));

    /// <summary>The audited plan of one panel; all that is not in stock is bought 150 mm wide at 10 dollars.</summary>
    private static Plan Plan(int planer, int panel, (int Narrowest, int Widest) strips, int[] stock)
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop
            {
                Unit = DisplayUnit.Millimetre,
                Kerf = Mm(3),
                Surfaced = default,
                PanelOversize = Length.Zero,
                SeamAllowance = Length.Zero,
                PlanerWidth = Mm(planer),
                NarrowestStrip = Mm(strips.Narrowest),
                WidestStrip = Mm(strips.Widest),
                ShortBlanks = ShortBlanks.Allow,
            },
            Design = new Design { Name = "top", Panels = [new Panel { Name = "top", Species = ["white-ash"], Finished = new(Mm(20), Mm(panel), Mm(500)) }] },
            Stock = [.. stock.Select((width, at) => new Board
            {
                Id = BoardIds.FromNumber(at + 1), Species = "white-ash", Surface = Surface.Surfaced, Size = new(Mm(20), Mm(width), Mm(500)), LoggedAt = DateTimeOffset.UnixEpoch,
            })],
            Offers =
            [
                new Offer
                {
                    Id = "yard/ash", Supplier = "yard", Species = "white-ash", Thickness = Mm(20), Surface = Surface.Surfaced,
                    Form = new ByThePiece(Mm(150), Mm(500), new Money(1000)),
                },
            ],
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
