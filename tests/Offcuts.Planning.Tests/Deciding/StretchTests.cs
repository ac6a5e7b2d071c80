using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Deciding;

// The answer of a stretch against planning every value, on small shops.
public class StretchTests
{
    private static readonly PlanLimits Enough = new(TimeSpan.FromSeconds(20));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void It_agrees_with_planning_every_value(int seed)
    {
        // Small shops with enough stock and without; each value scales the length of every other part, so that some parts shrink as others grow.
        var problem = RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Tiny));
        var values = Enumerable.Range(0, 9).Select(n => 70L + (10 * n)).ToList();
        var truth = values.ToDictionary(value => value, value => Planner.Solve(Scaled(problem, value), new PlanLimits(TimeSpan.FromSeconds(2))));
        var limits = truth.Values.Where(plan => plan.Missing.Count == 0).Select(plan => plan.WoodCost).Order().ToList();
        var limit = limits.Count == 0 ? Money.Zero : limits[limits.Count / 2];

        var answer = new StretchSearch(
            new StretchQuestion([.. values.OrderDescending()], value => new StretchOption(value, [Scaled(problem, value)]), limit, CountsItems: false),
            Enough, Planner.Solve, CancellationToken.None).Run();

        // A plan that is there refutes "out"; a proof that is there refutes "within".
        foreach (var value in values.Where(value => Fits(truth[value], limit)))
        {
            Assert.True(answer.Best?.Value >= value || answer.Open.Contains(value), $"{value} fits, but the answer is {answer.Best?.Value}.");
        }

        if (answer.Best is { } best)
        {
            Assert.True(Fits(best.Plan!, limit));
            Assert.Empty(Auditor.Audit(Scaled(problem, best.Value), best.Plan!));
            Assert.False(truth[best.Value].Missing.Count == 0 && truth[best.Value].WoodBound > limit);
        }

        // Open is only what planning it alone does not decide either.
        Assert.All(answer.Open, value => Assert.True(
            !Fits(truth[value], limit) && truth[value].WoodBound <= limit && !Trial.LacksForSure(truth[value]), $"{value} is open, but planning it decides it."));
        Assert.All(answer.Neighbours, neighbour => Assert.True(
            neighbour.Verdict != StretchVerdict.Out || !Fits(truth[neighbour.Value], limit), $"{neighbour.Value} is said to be out."));
    }

    [Fact]
    public void What_fits_need_not_be_monotone()
    {
        // Boards of 40 and 20 in; shelf and top are 44 in together, so each needs a board of its own. By hand: the short board takes a top up to 20 in,
        // or a shelf up to 20 in, which is a top of 24 in or more; between these nothing fits.
        long[] tops = [.. Enumerable.Range(10, 34).Select(top => (long)top)];
        Assert.Equal(tops.Where(top => top is <= 20 or >= 24 and <= 40), tops.Where(top => Best([top]) is not null));
        Assert.Equal(40, Best([.. tops.Reverse()]));
        Assert.Equal(10, Best(tops));
        Assert.Equal(24, Best([.. tops.OrderBy(top => Math.Abs(top - 23))]));
        Assert.Equal(20, Best([.. tops.OrderBy(top => Math.Abs(top - 21))]));

        static long? Best(long[] values)
        {
            var answer = new StretchSearch(new StretchQuestion(values, Table, Money.Zero, CountsItems: false), Enough, Planner.Solve, CancellationToken.None).Run();
            Assert.True(answer.IsSure);
            return answer.Best?.Value;
        }
    }

    [Fact]
    public void The_items_count_where_money_may_be_spent()
    {
        StretchOption Option(long value) => new(value, [Table(40).Ways[0] with
        {
            Design = Table(40).Ways[0].Design with { Items = [new BoughtItem("Hook", (int)value, new Money(100))] },
        }]);

        Assert.Equal(7, new StretchSearch(
            new StretchQuestion([9, 8, 7, 6], Option, new Money(700), CountsItems: true), Enough, Planner.Solve, CancellationToken.None).Run().Best?.Value);
        Assert.Equal(9, new StretchSearch(
            new StretchQuestion([9, 8, 7, 6], Option, Money.Zero, CountsItems: false), Enough, Planner.Solve, CancellationToken.None).Run().Best?.Value);
    }

    [Fact]
    public void Further_stops_are_not_spent()
    {
        // By hand: 5 hooks at 1.00 of one supplier, delivery 2.00, and as much as wanted of another: 7.00 and 1.00 a nail. The stop between them costs nothing.
        StretchOption Option(long value) => new(value, [Ordered(
            new BoughtItem("Hook", 5, new Money(100), "hardware"), new BoughtItem("Nail", (int)value, new Money(100), "smithy"))]);

        Assert.Equal(3, Best(Option, new Money(1000), countsItems: true));
        Assert.Null(Best(Option, new Money(700), countsItems: true));
        // No wood is bought, whatever comes with the items.
        Assert.Equal(9, Best(Option, Money.Zero, countsItems: false));
    }

    [Fact]
    public void What_the_suppliers_of_items_charge_is_spent_even_if_nothing_is_left_for_wood()
    {
        // The items alone come to the limit, their delivery does not.
        StretchOption Option(long value) => new(value, [Ordered(new BoughtItem("Hook", (int)value, new Money(100), "hardware"))]);
        Assert.Equal(5, Best(Option, new Money(700), countsItems: true));
    }

    private static long? Best(Func<long, StretchOption> option, Money limit, bool countsItems)
    {
        var answer = new StretchSearch(new StretchQuestion([9, 8, 7, 6, 5, 4, 3, 2, 1], option, limit, countsItems), Enough, Planner.Solve, CancellationToken.None).Run();
        Assert.True(answer.IsSure);
        return answer.Best?.Value;
    }

    private static PlanningProblem Ordered(params IReadOnlyList<BoughtItem> items)
    {
        var way = Table(40).Ways[0];
        return way with
        {
            Design = way.Design with { Items = items },
            Terms = [new SupplierTerms("hardware") { Delivery = new Money(200) }],
            Shop = way.Shop with { SecondStop = new Money(2000) },
        };
    }

    [Fact]
    public void A_value_that_cannot_be_built_is_out()
    {
        var answer = new StretchSearch(
            new StretchQuestion([3, 2, 40], value => value == 40 ? Table(40) : new StretchOption(value, []), Money.Zero, CountsItems: false), Enough, Planner.Solve, CancellationToken.None).Run();
        Assert.Equal(40, answer.Best?.Value);
        Assert.True(answer.IsSure);
    }

    [Fact]
    public void As_many_copies_as_there_is_wood_for()
    {
        // By hand: a peg of 4 x 6 in, 3 to a copy; boards of 40 and 20 in give 6 and 3 of them, which is 3 copies.
        var peg = Table(40).Ways[0] with
        {
            Design = new Design { Name = "Pegs", Parts = [new Part { Name = "Peg", Quantity = 3, MostQuantity = 9, Spares = 2, Finished = SizeText.Parse("3/4 x 4 x 6", DisplayUnit.Inch), Species = ["white-ash"] }] },
        };
        var most = DesignCopies.Most(peg.Design, peg.Stock);
        Assert.Equal(3, most);
        var question = new StretchQuestion(
            [.. Enumerable.Range(1, 8).Reverse().Select(copies => (long)copies)], copies => new StretchOption(copies, [peg with { Design = DesignCopies.Of(peg.Design, (int)copies) }]),
            Money.Zero, CountsItems: false, IsMonotone: true);
        var answer = new StretchSearch(question, Enough, Planner.Solve, CancellationToken.None).Run();
        Assert.Equal(3, answer.Best?.Value);
        Assert.True(answer.IsSure);
        Assert.Empty(Auditor.Audit(peg with { Design = DesignCopies.Of(peg.Design, 3) }, answer.Best!.Plan!));
    }

    private static StretchOption Table(long top) => new(top, [new PlanningProblem
    {
        Shop = new Shop { Kerf = Length.Zero, Surfaced = new Allowances(Length.Zero, Length.Zero, Length.Zero), ShortBlanks = ShortBlanks.Allow },
        Stock = [.. new[] { 40, 20 }.Select(length => new Board
        {
            Id = $"B{length}", Species = "white-ash", Size = SizeText.Parse($"3/4 x 4 x {length}", DisplayUnit.Inch), Surface = Surface.Surfaced, Appearance = Appearance.Clear, LoggedAt = DateTimeOffset.UnixEpoch,
        })],
        Design = new Design
        {
            Name = "Table",
            Parts =
            [
                new Part { Name = "Top", Finished = SizeText.Parse($"3/4 x 4 x {top}", DisplayUnit.Inch), Species = ["white-ash"] },
                new Part { Name = "Shelf", Finished = SizeText.Parse($"3/4 x 4 x {44 - top}", DisplayUnit.Inch), Species = ["white-ash"] },
            ],
        },
    }]);

    private static bool Fits(Plan plan, Money limit) => plan.Missing.Count == 0 && plan.WoodCost <= limit;

    private static PlanningProblem Scaled(PlanningProblem problem, long percent) => problem with
    {
        Design = problem.Design with
        {
            Parts = [.. problem.Design.Parts.Select((part, at) => part with { Finished = Scaled(part.Finished, at % 3 == 2 ? 170 - percent : percent), Most = null, Spacing = null })],
            Panels = [.. problem.Design.Panels.Select(panel => panel with { Finished = Scaled(panel.Finished, percent) })],
        },
    };

    private static Dimensions Scaled(Dimensions size, long percent) =>
        size with { Length = Length.FromTicks(Math.Max(Length.TicksPerInch, size.Length.Ticks * percent / 100)) };
}
