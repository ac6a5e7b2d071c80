using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>The bound on the worth that is used up for the money.</summary>
public sealed class WorthBoundTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(5)) { BoundsWorth = true };

    public enum Twist
    {
        None,
        Defects,
        Recipes,
        Freedom,
        Condition,
        KeepRules,
    }

    public static TheoryData<Twist> Twists => [.. Enum.GetValues<Twist>()];

    /// <summary>Whatever finds another plan for the same parts and no more money, it uses up no less.</summary>
    [Theory]
    [MemberData(nameof(Twists))]
    public void No_plan_of_a_random_shop_uses_up_less(Twist twist)
    {
        var (faults, known, compared) = (new List<string>(), 0, 0);
        foreach (var seed in Enumerable.Range(1, 30))
        {
            var problem = Twisted(twist, seed);
            var search = new PlanSearch(problem with { Stock = CountedStock.Of(problem) }, Limits, null, new SearchClock(Limits.Budget, CancellationToken.None));
            var plan = search.Run();
            if (search.LeastWorth is not { } bound)
            {
                continue;
            }

            known++;
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => $"seed {seed}: {finding}"));
            foreach (var other in Others(problem).Append(plan).Where(other => other.WoodCost <= plan.WoodCost && Missing(other) == Missing(plan)))
            {
                compared++;
                if (other.WorthUsed.MinorUnits < bound)
                {
                    faults.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}: bound {bound}, a plan uses up {other.WorthUsed.MinorUnits}"));
                }
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.True(known >= 20 && compared >= 40, string.Create(CultureInfo.InvariantCulture, $"{known} bounds, {compared} plans"));
    }

    [Theory]
    [InlineData(30, 1)]
    [InlineData(30, 2)]
    [InlineData(20, 3)]
    public void Parts_from_one_board_leave_one_end(int length, int quantity)
    {
        var problem = Rack(length, quantity);
        var plan = Planner.Solve(problem, Limits);

        // By the formula of the worth: 3/4 in thick, 6.00 a board foot, (0.3 + 0.7 l / 96) (0.5 + 0.5 w / 8); all pieces in a row, each with its kerf.
        var left = 96m - (quantity * (length + 0.125m));
        var used = (long)(Math.Floor(WorthOf(96m)) - Math.Floor(WorthOf(left)));
        Assert.Equal(used, plan.WorthUsed.MinorUnits);
        Assert.Equal(new Money(used), plan.WorthBound);
        Assert.Equal(Money.Zero, plan.WorthGap);

        static decimal WorthOf(decimal inches) => inches < 12 ? 0 : 0.75m * 6 * inches / 144 * 600 * (0.3m + (0.7m * inches / 96)) * (0.5m + (0.5m * 6 / 8));
    }

    [Fact]
    public void A_search_that_is_not_asked_or_not_thorough_says_nothing()
    {
        Assert.Null(Planner.Solve(Rack(30, 1), Limits with { BoundsWorth = false }).WorthBound);
        Assert.Null(Planner.Solve(Rack(30, 1), Limits with { Effort = PlanEffort.Quick }).WorthBound);
    }

    /// <summary>What the choices lack need not be the same, so that neither bounds plans that lack what the other does.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Where_something_is_missing_only_one_choice_has_one(bool hasChoice)
    {
        var rack = Rack(30, 2);
        string[] species = hasChoice ? ["white-ash", "cherry"] : ["white-ash"];
        var problem = rack with
        {
            Stock = [.. species.Select(one => rack.Stock[0] with { Id = one, Species = one, Size = rack.Stock[0].Size with { Length = Length.FromInches(50) } })],
            Design = rack.Design with
            {
                Groups = [new FinishGroup("pair", true, species)],
                Parts = [rack.Design.Parts[0] with { Species = species, Group = "pair" }],
            },
        };

        var plan = Planner.Solve(problem, Limits);
        Assert.Equal((1, hasChoice), (plan.MissingCount, plan.WorthBound is null));
    }

    [Fact]
    public void Under_terms_only_a_plan_that_spends_nothing_has_one()
    {
        PlanningProblem Ordered(int quantity) => Rack(30, quantity) with
        {
            Offers = [PublishedProblems.CreateOffer("board", 3000, 200, 900) with { Kind = BoardKind.Solid, Species = "white-ash", Thickness = Length.FromInches(0, 3, 4) }],
            Terms = [new SupplierTerms("yard") { Delivery = new Money(500) }],
        };

        var (free, bought) = (Planner.Solve(Ordered(3), Limits), Planner.Solve(Ordered(4), Limits));
        Assert.Equal((Money.Zero, true), (free.Outlay, free.WorthBound is not null));
        Assert.Equal((1400L, (Money?)null), (bought.Outlay.MinorUnits, bought.WorthBound));
    }

    private static PlanningProblem Rack(int length, int quantity) => new()
    {
        Shop = new Shop { Surfaced = new Allowances(Length.Zero, Length.Zero, Length.Zero) },
        Stock = [new Board
        {
            Id = "AAA", Species = "white-ash", Surface = Surface.Surfaced, LoggedAt = DateTimeOffset.UnixEpoch,
            Size = new Dimensions(Length.FromInches(0, 3, 4), Length.FromInches(6), Length.FromInches(96)),
        }],
        Design = new Design
        {
            Name = "rails",
            Parts = [new Part
            {
                Name = "rail", Quantity = quantity, Species = ["white-ash"],
                Finished = new Dimensions(Length.FromInches(0, 3, 4), Length.FromInches(6), Length.FromInches(length)),
            }],
        },
    };

    private static PlanningProblem Twisted(Twist twist, int seed)
    {
        var kind = new ShopKind(seed % 3 == 0 ? ShopScale.Tiny : ShopScale.Smallest, MustBuy: seed % 2 == 1, Metric: seed % 4 >= 2);
        var problem = RandomShops.Create(seed, kind);
        return twist switch
        {
            Twist.None => problem,
            Twist.Defects => RandomDefects.Add(problem, seed),
            Twist.Recipes => RandomRecipes.Apply(problem, seed, kind.Metric),
            Twist.Freedom => RandomFreedom.Add(problem, seed),
            Twist.Condition => RandomCondition.Applied(problem, seed),
            Twist.KeepRules => RandomKeepRules.Apply(problem, seed, kind.Metric),
            _ => throw new ArgumentOutOfRangeException(nameof(twist)),
        };
    }

    private static IEnumerable<Plan> Others(PlanningProblem problem) =>
    [
        Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(300), Seed: 2)),
        Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(1), Seed: 3) { Effort = PlanEffort.Quick }),
    ];

    private static string Missing(Plan plan) => string.Join(',', plan.Missing.Select(missing => $"{missing.Name} {missing.Quantity}").Order(StringComparer.Ordinal));
}
