using Offcuts.Domain;
using Offcuts.Planning.Bounds;
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

    [Fact]
    public void What_a_board_is_worth_is_no_less_than_any_proper_pattern_and_no_more_than_the_knapsacks_say()
    {
        var (compared, lowered) = (0, 0);
        foreach (var seed in Enumerable.Range(1, 40))
        {
            var problem = RandomShops.Create(seed, new ShopKind(ShopScale.Tiny, MustBuy: true, Metric: seed % 2 == 0));
            var model = new ModelBuilder(problem).Build(Wanted.All(problem.Design with { Panels = [] }));
            if (model.Boards.Count == 0 || model.Rows.Count == 0)
            {
                continue;
            }

            var (random, pricer, need) = (new Random(seed), new PatternPricer(model), model.Rows.Select(row => row.Needed).ToArray());
            var prices = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(_ => 100 + (400 * random.NextDouble()))], need, 0);
            var knapsacks = pricer.BestValues(prices);
            var values = new ProperValues(model, pricer, () => false).Of(prices, [.. knapsacks.Select(value => value * (0.5 + (0.5 * random.NextDouble())))]);
            lowered += model.Boards.Count(board => values[board.Index] < knapsacks[board.Index] - 1);
            Assert.All(model.Boards, board => Assert.True(values[board.Index] <= knapsacks[board.Index] + 1e-5));
            foreach (var pattern in Met(model, pricer, random))
            {
                compared++;
                var worth = pattern.Cover.Sum(cover => prices.Piece[cover.Row] * Math.Min(cover.Amount, need[cover.Row]));
                Assert.True(worth <= values[pattern.Board.Index], $"seed {seed}: {worth} of {values[pattern.Board.Index]}");
            }
        }

        Assert.True(compared > 500 && lowered > 20, $"{compared} patterns compared, {lowered} boards lowered");
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
        foreach (var pattern in Met(model, pricer, random).Where(each => each.Cover.Sum(cover => prices.Piece[cover.Row] * cover.Amount) >= least[each.Board.Index]))
        {
            compared++;
            Assert.True(
                listed.Exists(near => near.Board == pattern.Board && Array.TrueForAll(pattern.Cover, cover => Amount(near, cover.Row) >= cover.Amount)),
                $"seed {seed}: {pattern.Key} is worth enough and not listed.");
        }

        return compared;
    }

    /// <summary>Patterns that other prices lead to.</summary>
    private static IEnumerable<Pattern> Met(PlanningModel model, PatternPricer pricer, Random random)
    {
        var need = model.Rows.Select(row => row.Needed).ToArray();
        for (var n = 0; n < 20; n++)
        {
            var other = PriceList.FromDuals(model.Rows, [.. model.Rows.Select(_ => random.Next(3) == 0 ? 0 : 500 * random.NextDouble())], need, 0);
            foreach (var pattern in pricer.Improving(other, new double[model.Boards.Count], new CostWeights(0, 0), 1000, _ => true, CancellationToken.None))
            {
                yield return pattern;
            }
        }
    }

    private static long Amount(Pattern pattern, int row) => pattern.Cover.FirstOrDefault(cover => cover.Row == row).Amount;
}
