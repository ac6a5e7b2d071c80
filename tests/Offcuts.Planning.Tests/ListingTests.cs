using Offcuts.Domain;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Testing;
using Xunit;
using PriceList = Offcuts.Planning.Pricing.PriceList;

namespace Offcuts.Planning.Tests;

public class ListingTests
{
    private const int Effort = 3_000_000;

    [Fact]
    public void A_pattern_that_is_worth_enough_makes_no_more_than_one_that_is_listed()
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(1, 60))
        {
            var problem = RandomShops.Create(seed, new ShopKind(ShopScale.Tiny, MustBuy: true, Metric: seed % 2 == 0));
            var model = new ModelBuilder(problem).Build(Wanted.All(problem.Design with { Panels = [] }));
            if (model.Boards.Count > 0 && model.Rows.Count > 0)
            {
                compared += Compare(model, new Random(seed), seed);
            }
        }

        Assert.True(compared > 500, $"Only {compared} patterns were compared.");
    }

    [Theory]
    [InlineData(4)]
    [InlineData(17)]
    [InlineData(20)]
    public void Shops_whose_purchases_alone_leave_a_gap_are_proved(int seed) =>
        Assert.Equal(PlanStatus.Proved, Planner.Solve(RandomShops.MustBuy(seed), new PlanLimits(TimeSpan.FromSeconds(60))).Status);

    private static int Compare(PlanningModel model, Random random, int seed)
    {
        var pricer = new PatternPricer(model);
        var need = model.Rows.Select(row => row.Needed).ToArray();
        var prices = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(_ => 100 + (400 * random.NextDouble()))], need, 0);
        var slack = 600 * random.NextDouble();
        var least = pricer.BestValues(prices).Select(value => value - slack).ToArray();
        if (pricer.Near(prices, model.Boards.ToHashSet(), least, new ListingEffort(Effort, () => false), out _) is not { } listed)
        {
            return 0;
        }

        var compared = 0;
        for (var n = 0; n < 20; n++)
        {
            // Patterns that other prices lead to.
            var other = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(_ => random.Next(3) == 0 ? 0 : 500 * random.NextDouble())], need, 0);
            foreach (var pattern in pricer.Improving(other, new double[model.Boards.Count], new CostWeights(0, 0), 1000, _ => true, CancellationToken.None))
            {
                if (pattern.Cover.Sum(cover => prices.Piece[cover.Row] * cover.Amount) >= least[pattern.Board.Index])
                {
                    compared++;
                    Assert.True(
                        listed.Exists(near => near.Board == pattern.Board && Array.TrueForAll(pattern.Cover, cover => Amount(near, cover.Row) >= cover.Amount)),
                        $"seed {seed}: {pattern.Key} is worth enough and not listed.");
                }
            }
        }

        return compared;
    }

    private static long Amount(Pattern pattern, int row) => pattern.Cover.FirstOrDefault(cover => cover.Row == row).Amount;
}
