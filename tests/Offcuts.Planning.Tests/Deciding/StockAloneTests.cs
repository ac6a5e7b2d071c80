using Offcuts.Domain;
using Offcuts.Planning.Deciding;
using Offcuts.Planning.Mixing;
using Offcuts.Planning.Search;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Deciding;

public class StockAloneTests
{
    [Fact]
    public void A_look_tells_whether_stock_alone_suffices()
    {
        // Against putting the parts on the boards in every way; most mixes beside the limit are such that the linear program would do with parts of boards.
        var (asked, open) = (0, 0);
        foreach (var seed in Enumerable.Range(1, 8))
        {
            var (shop, designs) = RandomMixes.Create(seed);
            var fitting = RandomMixes.Fitting(shop, designs).Select(Key).ToHashSet(StringComparer.Ordinal);
            var (joint, names) = JointDesign.Of(designs);
            var builds = new MixBuilds(new MixQuestion(shop with { Design = joint, Builds = names }, [.. designs.Select(_ => new MixRange(0, 100))]));
            int[][] near = [.. fitting.Select(key => key.Split(' ').Select(int.Parse).ToArray()).SelectMany(counts => counts.Select((_, at) => counts.Select((count, n) => n == at ? count + 1 : count).ToArray()))
                .DistinctBy(Key).Take(7)];
            foreach (var counts in near)
            {
                var seen = Screen.Look(builds.At(counts), 0, 1, new PriceMemory(), new SearchClock(TimeSpan.FromSeconds(10), CancellationToken.None));
                asked++;
                open += seen.Cost is null && seen.Bound <= 0 ? 1 : 0;
                Assert.True(seen.Cost is null || fitting.Contains(Key(counts)), $"Seed {seed}: {Key(counts)} does not fit.");
                Assert.True(seen.Bound <= 0 || !fitting.Contains(Key(counts)), $"Seed {seed}: {Key(counts)} fits.");
                if (seen.Plan is { } found)
                {
                    Assert.Empty(Auditing.Auditor.Audit(found.Problem, found.Plan));
                }
            }
        }

        Assert.True(asked >= 30 && open == 0, $"Of {asked} looks {open} left it open.");

        static string Key(int[] counts) => string.Join(' ', counts);
    }

    [Theory]
    [InlineData(2, 0L)]
    [InlineData(3, null)]
    public void What_buys_no_wood_has_no_charges_whatever_the_suppliers_ask(int copies, long? cost)
    {
        var shop = Shop();
        var problem = shop with
        {
            Design = DesignCopies.Of(Set, copies),
            Offers =
            [
                PublishedProblems.CreateOffer("near", 100, 100, 50),
                PublishedProblems.CreateOffer("far", 100, 100, 40) with { Supplier = "mill" },
            ],
            Shop = shop.Shop with { SecondStop = new Money(2000) },
        };
        var seen = Screen.Look(problem, 10_000, 1, new PriceMemory(), new SearchClock(TimeSpan.FromSeconds(10), CancellationToken.None));
        Assert.Equal(cost, seen.Cost);
        Assert.True(seen.Bound <= Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5))).Outlay.MinorUnits);
    }

    [Fact]
    public void That_boards_are_merely_too_few_is_proved()
    {
        var shop = Shop();
        var question = new StretchQuestion(
            [4, 3, 2, 1], copies => new StretchOption(copies, [shop with { Design = DesignCopies.Of(Set, (int)copies) }]), Money.Zero, CountsItems: false, IsMonotone: true);
        var answer = new StretchSearch(question, new PlanLimits(TimeSpan.FromSeconds(10)), Planner.Solve, CancellationToken.None).Run();

        // 46 + 33 = 79 fits 90 and 80, not 75: two sets, though 245 mm are more than three times 79.
        Assert.Equal((2, true), (answer.Best?.Value, answer.IsSure));
    }

    private static Design Set { get; } = new()
    {
        Name = "Set",
        Parts = [PublishedProblems.CreatePart("long", 46, 100, 1), PublishedProblems.CreatePart("short", 33, 100, 1)],
    };

    private static PlanningProblem Shop() => PublishedProblems.Empty(0) with
    {
        Stock = [.. new[] { 90, 80, 75 }.Select(length => new Board
        {
            Id = FormattableString.Invariant($"B{length}"), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced,
            Size = PublishedProblems.Size(length, 100), LoggedAt = DateTimeOffset.UnixEpoch,
        })],
    };
}
