using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Together;

/// <summary>Several builds planned from one stock with one order.</summary>
public class TogetherTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(3));

    [Fact]
    public void One_board_for_both_is_cheaper_than_one_for_each()
    {
        // A bought board of 1400 mm gives two rails; each build wants one.
        var plan = Solve(Rails(Bought(1400), 1, 1));
        Assert.Equal((PlanStatus.Proved, 500), (plan.Status, plan.WoodCost.MinorUnits));
        // One after another the second is cut from what the first leaves, which costs no more.
        Assert.All(plan.OneAfterAnother, order => Assert.Equal(500, order.TotalCost.MinorUnits));
        Assert.Equal([["A", "B"], ["B", "A"]], plan.OneAfterAnother.Select(order => order.Builds));
    }

    /// <summary>Without a third cut one board holds both builds only if what the first leaves is cut anew, rips first: areas alone say that one must be bought.</summary>
    [Fact]
    public void A_plan_that_cuts_a_leftover_again_is_bounded_by_areas()
    {
        var (design, builds) = JointDesign.Of(
        [
            new Design { Name = "A", Parts = [PublishedProblems.CreatePart("whole", 600, 200, 1)] },
            new Design { Name = "B", Parts = [PublishedProblems.CreatePart("long", 397, 60, 1), PublishedProblems.CreatePart("square", 130, 130, 3)] },
        ]);
        var problem = PublishedProblems.Empty(3) with { Design = design, Builds = builds, Offers = [PublishedProblems.CreateOffer("plate", 1000, 200, 5000)] };

        var plan = Solve(problem);

        Assert.Equal((5000, 5000, PlanStatus.Proved), (plan.WoodCost.MinorUnits, plan.WoodBound.MinorUnits, plan.Status));
        // As one build, without that, it takes two.
        Assert.Equal(10000, Solve(problem with { Builds = [] }).WoodCost.MinorUnits);
    }

    [Fact]
    public void One_order_is_delivered_once()
    {
        var problem = Rails(Bought(700), 1, 1, 1) with { Terms = [new SupplierTerms("yard") { Delivery = new Money(2000) }] };
        var plan = Solve(problem);
        Assert.Equal((1500, 2000), (plan.WoodCost.MinorUnits, plan.ChargeCost.MinorUnits));
        Assert.Equal(6, plan.OneAfterAnother.Count);
        Assert.All(plan.OneAfterAnother, order => Assert.Equal(3 * 2500, order.TotalCost.MinorUnits));
    }

    [Fact]
    public void Where_wood_does_not_suffice_the_first_build_is_served_first()
    {
        // Two boards of one rail each; the first build wants two, the second two.
        var problem = Rails([], 2, 2) with { Stock = [Board("X", 700), Board("Y", 700)] };
        var plan = Solve(problem);
        Assert.Equal(("B: rail", 2), (Assert.Single(plan.Missing).Name, plan.Missing[0].Quantity));

        var (design, builds) = JointDesign.Of([.. new[] { "B", "A" }.Select(name => JointDesign.Only(problem.Design, name)).Select(Bare)]);
        var other = Solve(problem with { Design = design, Builds = builds });
        Assert.Equal("A: rail", Assert.Single(other.Missing).Name);
    }

    [Fact]
    public void Shares_of_the_builds_add_up_to_the_plan()
    {
        var problem = Rails(Bought(1400), 3, 2, 1);
        var plan = Solve(problem);
        var shares = BuildShare.Of(problem, plan);
        Assert.Equal(plan.WoodCost.MinorUnits, shares.Sum(share => share.WoodCost.MinorUnits));
        Assert.Equal([3, 2, 1], shares.Select(share => share.Pieces));
        Assert.Equal(["A: rail", "B: rail", "C: rail"], Setup.Of(problem, plan).First(setup => setup.Kind == SetupKind.Plane).Parts);
    }

    [Fact]
    public void Together_is_never_dearer_than_one_after_another_in_any_order()
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(300, 14))
        {
            var problem = RandomQueues.Create(seed, ShopScale.Tiny, 2 + (seed % 2), mustBuy: seed % 3 > 0);
            problem = seed % 4 == 0 ? RandomTerms.Add(problem, seed) : problem;
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(1500)));
            var findings = Auditor.Audit(problem, plan);
            Assert.True(findings.Count == 0, FormattableString.Invariant($"seed {seed}: {string.Join("; ", findings)}"));
            var missing = plan.MissingCount;
            foreach (var order in plan.OneAfterAnother.Where(order => order.MissingPieces <= missing))
            {
                compared++;
                Assert.True(missing > 0 || plan.WoodBound <= order.Outlay, FormattableString.Invariant($"seed {seed}: a bound of {plan.WoodBound.MinorUnits}, and {order.Outlay.MinorUnits} will do."));
                Assert.True(plan.Outlay.CompareTo(order.Outlay) <= 0, FormattableString.Invariant($"seed {seed}: {plan.Outlay.MinorUnits} together, {order.Outlay.MinorUnits} in the order {string.Join(", ", order.Builds)}"));
            }
        }

        Assert.True(compared >= 20, FormattableString.Invariant($"Only {compared} orders were compared."));
    }

    private static Plan Solve(PlanningProblem problem)
    {
        var plan = Planner.Solve(problem, Limits);
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    private static Offer[] Bought(int length) =>
        [new Offer { Id = "yard/ash", Supplier = "yard", Species = "white-ash", Thickness = Mm(25), Form = new ByThePiece(Mm(100), Mm(length), new Money(500)) }];

    private static Board Board(string id, int length) => new() { Id = id, Species = "white-ash", Size = new Dimensions(Mm(25), Mm(100), Mm(length)), LoggedAt = default };

    // Builds A, B and so on, each of so many rails.
    private static PlanningProblem Rails(Offer[] offers, params int[] rails)
    {
        var (design, builds) = JointDesign.Of([.. rails.Select((count, at) => new Design
        {
            Name = ((char)('A' + at)).ToString(),
            Parts = [new Part { Name = "rail", Quantity = count, Finished = new Dimensions(Mm(20), Mm(60), Mm(600)), Species = ["white-ash"] }],
        })]);
        return new PlanningProblem { Shop = new Shop(), Stock = [], Offers = offers, Design = design, Builds = builds };
    }

    private static Design Bare(Design build) => build with { Parts = [.. build.Parts.Select(part => part with { Name = JointDesign.Within(part.Name, build.Name) })] };

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
