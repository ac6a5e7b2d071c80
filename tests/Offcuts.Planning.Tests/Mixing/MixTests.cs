using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Mixing;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Mixing;

// The answer against trying every mix, on small shops.
public class MixTests
{
    private static readonly PlanLimits Enough = new(TimeSpan.FromSeconds(10));

    [Fact]
    public void It_agrees_with_trying_every_mix_in_one_dimension()
    {
        var sure = 0;
        foreach (var seed in Enumerable.Range(1, 14))
        {
            var (shop, designs) = RandomMixes.Create(seed);
            var fitting = RandomMixes.Fitting(shop, designs).Select(counts => (Counts: counts, Rank: Rank(shop, designs, counts))).ToList();
            var answer = Run(shop, designs);
            Audited(answer);
            if (fitting.Count == 0)
            {
                Assert.Null(answer.Best);
                continue;
            }

            var (counts, truth) = fitting.MaxBy(mix => mix.Rank);
            Assert.True((answer.Best?.Rank ?? default).CompareTo(truth) <= 0, $"Seed {seed}: {Text(answer.Best!.Counts)} cannot be made.");
            Assert.True(answer.AtMost is not { } most || most.CompareTo(truth) >= 0, $"Seed {seed}: {Text(counts)} is above the bound.");
            Assert.True(!answer.IsSure || answer.Best?.Rank == truth, $"Seed {seed}: {Text(counts)} is better than {Text(answer.Best?.Counts ?? [])}.");
            sure += answer.IsSure ? 1 : 0;
        }

        Assert.True(sure >= 12, $"Only {sure} answers were proved.");
    }

    [Fact]
    public void No_mix_that_can_be_planned_is_better()
    {
        var (made, sure, compared) = (0, 0, 0);
        foreach (var seed in Enumerable.Range(1, 9))
        {
            // Solid wood, panels, groups of one species.
            const int Most = 2;
            var problem = RandomQueues.Create(seed, ShopScale.Tiny, 2 + (seed % 2), mustBuy: false);
            problem = problem with
            {
                Stock = [.. Enumerable.Range(0, 4).SelectMany(rack => RandomShops.Create(seed + rack, RandomShops.Kind(seed, ShopScale.Tiny)).Stock
                    .Select(board => board with { Id = FormattableString.Invariant($"{board.Id}-{rack}") }))],
            };
            var designs = problem.Builds.Select(build => JointDesign.Only(problem.Design, build)).ToList();
            var answer = Run(problem, designs, [.. designs.Select(_ => new MixRange(0, Most))]);
            Audited(answer);
            (made, sure) = (made + (answer.Best is null ? 0 : 1), sure + (answer.IsSure ? 1 : 0));
            foreach (var code in Enumerable.Range(1, (int)Math.Pow(Most + 1, designs.Count) - 1))
            {
                int[] counts = [.. Enumerable.Range(0, designs.Count).Select(at => code / (int)Math.Pow(Most + 1, at) % (Most + 1))];
                var rank = Rank(problem, designs, counts);
                if (rank.CompareTo(answer.Best?.Rank ?? default) > 0)
                {
                    compared++;
                    var plan = Planner.Solve(Copied(problem, designs, counts), new PlanLimits(TimeSpan.FromSeconds(0.5)));
                    Assert.True(
                        plan.Missing.Count > 0 || (!answer.IsSure && !(answer.AtMost?.CompareTo(rank) < 0)),
                        $"Seed {seed}: {Text(counts)} can be made, but the answer is {Text(answer.Best?.Counts ?? [])}.");
                }
            }
        }

        Assert.True(made >= 5 && sure >= 7 && compared >= 50, $"{made} mixes were found, {sure} proved, {compared} compared.");
    }

    [Fact]
    public void What_fits_best_together_is_taken()
    {
        // By hand: a board of 100 mm without a kerf takes 60 + 40 or 40 + 30 + 30 without waste, but two of 60 never. Two boards: 60 + 40 twice has four pieces,
        // 40 + 30 + 30 twice has six, and as much wood.
        var (shop, designs) = Hundreds();
        var answer = Run(shop, designs);
        Assert.True(answer.IsSure);
        Assert.Equal([0, 2, 4], answer.Best!.Counts);
        Assert.Equal(answer.Best.Rank, answer.AtMost);
        Audited(answer);
    }

    [Fact]
    public void Where_items_come_from_makes_no_difference()
    {
        var (shop, designs) = Hundreds();
        shop = shop with { Shop = shop.Shop with { SecondStop = new Money(700) }, Terms = [new SupplierTerms("yard") { Delivery = new Money(500) }] };
        var answer = Run(shop, [.. designs.Select(design => design with { Items = [new("hinge", 2, new Money(300), "yard"), new("knob", 1, new Money(100), "other")] })]);
        Assert.True(answer.IsSure);
        Assert.Equal([0, 2, 4], answer.Best!.Counts);
        Audited(answer);
    }

    [Fact]
    public void Fewest_and_most_copies_are_kept()
    {
        var (shop, designs) = Hundreds();
        var one = Run(shop, designs, [new(1, 1), new(0, 9), new(0, 1)]);
        Assert.True(one.IsSure);
        // By hand: with one of 60, a 40 beside it, then 40 + 40 or 40 + 30 on the other board: two of 40 are more wood.
        Assert.Equal([1, 3, 0], one.Best!.Counts);
        var none = Run(shop, designs, [new(3, 3), new(0, 9), new(0, 9)]);
        Assert.Null(none.Best);
        Assert.True(none.IsSure);
    }

    [Fact]
    public void A_region_gives_the_best_mix_under_its_cut()
    {
        // Against going through all of them.
        var (shop, designs) = Hundreds();
        var builds = new MixBuilds(Question(shop, designs));
        foreach (var room in new[] { 0.0, 31, 99.5, 140, 200 })
        {
            var region = new MixRegion(builds, [new MixChoice(builds.Most, new MixCut([70, 41, 29], room))]);
            region.Exclude([0, 1, 1]);
            var every = from a in Enumerable.Range(0, 3)
                        from b in Enumerable.Range(0, 6)
                        from c in Enumerable.Range(0, 8)
                        where (70 * a) + (41 * b) + (29 * c) <= room && !(b >= 1 && c >= 1) && a <= builds.Most[0] && b <= builds.Most[1] && c <= builds.Most[2]
                        select builds.RankOf([a, b, c]);
            var best = region.Best(default, out var isWhole);
            Assert.True(isWhole);
            Assert.Equal(every.Max(), builds.RankOf(best ?? [0, 0, 0]));
        }
    }

    /// <summary>What is excluded as the best that was met takes all that hold it with it: better ones too, if they were not met before.</summary>
    [Fact]
    public void A_region_that_was_not_gone_through_once_is_never_said_to_be_empty()
    {
        var (shop, designs) = Hundreds();
        var builds = new MixBuilds(Question(shop, designs));
        var told = 0;
        foreach (var mostSteps in Enumerable.Range(1, 60))
        {
            MixRegion Region() => new(builds, [new MixChoice(builds.Most, new MixCut([70, 41, 29], 140))], mostSteps);
            var (before, fresh) = (Region(), Region());
            before.Best(default, out var wasWhole);
            foreach (int[] one in new int[][] { [1, 0, 0], [0, 1, 0], [0, 0, 1] })
            {
                before.Exclude(one);
                fresh.Exclude(one);
            }

            Assert.Null(before.Best(default, out var isWhole));
            Assert.Null(fresh.Best(default, out var isFreshWhole));
            Assert.Equal((mostSteps, wasWhole && isFreshWhole), (mostSteps, isWhole));
            told += isFreshWhole && !wasWhole ? 1 : 0;
        }

        Assert.True(told > 0, "Nothing was compared.");
    }

    private static (PlanningProblem Shop, IReadOnlyList<Design> Designs) Hundreds() => (
        PublishedProblems.Empty(0) with
        {
            Stock = [new Board
            {
                Id = "A", Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced, Quantity = 2, Size = PublishedProblems.Size(100, 100), LoggedAt = DateTimeOffset.UnixEpoch,
            }],
        },
        [.. new[] { 60, 40, 30 }.Select(length => new Design { Name = FormattableString.Invariant($"of {length}"), Parts = [PublishedProblems.CreatePart("piece", length, 99, 1)] })]);

    private static MixAnswer Run(PlanningProblem shop, IReadOnlyList<Design> designs, IReadOnlyList<MixRange>? ranges = null) =>
        new MixSearch(Question(shop, designs, ranges), Enough, Planner.Solve, null, CancellationToken.None).Run();

    private static MixQuestion Question(PlanningProblem shop, IReadOnlyList<Design> designs, IReadOnlyList<MixRange>? ranges = null)
    {
        var (joint, builds) = JointDesign.Of(designs);
        return new MixQuestion(shop with { Design = joint, Builds = builds }, ranges ?? [.. designs.Select(_ => new MixRange(0, 1000))]);
    }

    private static void Audited(MixAnswer answer)
    {
        if (answer.Best is { } best)
        {
            Assert.Empty(best.Plan.Missing);
            Assert.Equal(Money.Zero, best.Plan.WoodCost);
            Assert.Empty(Auditor.Audit(best.Problem, best.Plan));
        }
    }

    private static PlanningProblem Copied(PlanningProblem problem, IReadOnlyList<Design> designs, int[] counts)
    {
        var copies = designs.Zip(counts).Where(pair => pair.Second > 0).Select(pair => DesignCopies.Of(pair.First, pair.Second)).ToList();
        return problem with { Design = JointDesign.Of(copies).Design, Builds = [], Offers = [] };
    }

    private static MixRank Rank(PlanningProblem shop, IReadOnlyList<Design> designs, int[] counts) =>
        new MixBuilds(Question(shop, designs)).RankOf(counts);

    private static string Text(IEnumerable<int> counts) => string.Join(" + ", counts);
}
