using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class FitOrderingTests
{
    private static readonly Gen<(FitFigures, string)> AnyBuild = Gen.Select(
        Gen.Int[0, 2], Gen.Long[0, 3], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 3], Gen.Int[0, 5],
        (missing, cost, share, feet, eaten, name) => (new FitFigures(missing, new Money(cost), share / 2m, feet, eaten), $"design-{name}"));

    [Fact]
    public void It_is_a_total_order()
    {
        foreach (var order in Enum.GetValues<FitOrder>())
        {
            var ordering = new FitOrdering(order);
            Gen.Select(AnyBuild, AnyBuild, AnyBuild).Sample((one, two, three) =>
            {
                Assert.Equal(Math.Sign(ordering.Compare(one, two)), -Math.Sign(ordering.Compare(two, one)));
                Assert.True(ordering.Compare(one, two) > 0 || ordering.Compare(two, three) > 0 || ordering.Compare(one, three) <= 0);
            });
        }
    }

    [Fact]
    public void Money_comes_before_share_and_the_pile_before_money_but_what_cannot_be_finished_comes_last()
    {
        var free = (Figures(0, 0, 1, eaten: 5), "free");
        var cheap = (Figures(0, 200, 0.9m, eaten: 80), "cheap");
        var dear = (Figures(0, 900, 0.95m, eaten: 90), "dear");
        var lacking = (Figures(1, 0, 0.5m, eaten: 500), "lacking");
        var empty = (Figures(3, 0, 0, eaten: 0), "empty");

        Assert.Equal(["free", "cheap", "dear", "lacking", "empty"], Sorted(FitOrder.Cheapest));
        Assert.Equal(["dear", "cheap", "free", "lacking", "empty"], Sorted(FitOrder.Pile));

        IEnumerable<string> Sorted(FitOrder order) => new[] { empty, dear, lacking, cheap, free }.Order(new FitOrdering(order)).Select(build => build.Item2);
    }

    private static FitFigures Figures(int missing, long cost, decimal share, decimal eaten) => new(missing, new Money(cost), share, 10 * share, eaten);
}
