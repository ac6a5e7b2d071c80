using CsCheck;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Domain.Tests;

public class CullTests
{
    private static readonly DateOnly Today = new(2026, 6, 1);
    private static readonly Dictionary<string, decimal> NoLimits = [];

    [Fact]
    public void What_is_useful_young_and_kept_stays() => Assert.Empty(Suggest(NoLimits, new CullBoard(Board("A"), true)));

    [Theory]
    [InlineData(false, 100, 20, CullReason.FitsNothing)]
    [InlineData(true, 730, 20, CullReason.Old)]
    [InlineData(true, 100, 11, CullReason.BreaksRule)]
    public void Each_reason_is_told(bool fits, int days, int length, CullReason reason)
    {
        var candidate = Assert.Single(Suggest(NoLimits, new CullBoard(Board("A", days, length), fits)));
        Assert.Equal([reason], candidate.Reasons);
        Assert.Equal(days, candidate.Days);
    }

    [Fact]
    public void The_rule_is_asked_of_what_defects_leave_clear()
    {
        var board = Board("A");
        Assert.Empty(Suggest(NoLimits, new CullBoard(board, true, board.Size with { Length = Length.FromInches(12) })));
        Assert.Equal([CullReason.BreaksRule], Assert.Single(Suggest(NoLimits, new CullBoard(board, true, board.Size with { Length = Length.FromInches(11) }))).Reasons);
    }

    [Fact]
    public void Without_designs_nothing_fits_none() => Assert.Empty(Suggest(NoLimits, new CullBoard(Board("A"), null)));

    [Fact]
    public void What_the_rule_always_keeps_stays_whatever_else()
    {
        var shop = new Shop { KeepRule = new([new(KeepWord.Always, ["black-walnut"], [])]) };
        var boards = new[] { new CullBoard(Board("A", 2000, 5) with { Species = "black-walnut" }, false), new CullBoard(Board("B", 2000, 5), false) };
        Assert.Equal("B", Assert.Single(new Cull(shop, WorthRates.Default, Today, 730).Suggest(boards, NoLimits)).Board.Id);
    }

    [Fact]
    public void What_a_plan_holds_stays_and_the_rest_of_its_row_may_go()
    {
        var held = Board("A", 2000) with { Quantity = 3, Holds = [new Hold("plan", 1)] };
        var candidate = Assert.Single(Suggest(NoLimits, new CullBoard(held, true), new CullBoard(Board("B", 2000) with { Status = BoardStatus.Gone }, true)));
        Assert.Equal(2, candidate.Quantity);
        Assert.Equal(2 * BoardMeasure.CubicMetres(held.Size), candidate.CubicMetres);
    }

    [Fact]
    public void More_reasons_go_before_fewer_and_what_is_worth_little_for_its_space_before_what_is_worth_much()
    {
        var found = Suggest(
            NoLimits, new CullBoard(Board("long", 800, 90), true), new CullBoard(Board("short", 800, 14), true), new CullBoard(Board("both", 800, 90), false),
            new CullBoard(Board("older", 900, 14), true));
        // Of the two short ones the older is worth a little less.
        Assert.Equal(["both", "older", "short", "long"], found.Select(candidate => candidate.Board.Id));
    }

    /// <summary>Each board is 1 x 4 x 20 in: 80 cubic inches, 0.00131 cubic metres. Two of three must go to make 0.0015.</summary>
    [Fact]
    public void A_place_beyond_its_limit_gives_as_many_as_bring_it_below()
    {
        var boards = new[] { Board("A", 10), Board("B", 500), Board("C", 200), Board("D", 5) with { Place = "elsewhere" } };
        var found = Suggest(new() { ["bin"] = 0.0015m }, [.. boards.Select(board => new CullBoard(board, true))]);
        Assert.Equal(["B", "C"], found.Select(candidate => candidate.Board.Id));
        Assert.All(found, candidate => Assert.Equal([CullReason.PlaceFull], candidate.Reasons));
    }

    [Fact]
    public void As_many_are_taken_as_free_the_space_asked_for()
    {
        var found = Suggest(NoLimits, [.. Enumerable.Range(0, 10).Select(number => new CullBoard(Board($"B{number}", 800 + number), true))]);
        Assert.Equal(10, found.Count);
        Assert.Equal(2, Cull.Freeing(found, 0.0015m).Count());
        Assert.Single(Cull.Freeing(found, 0.0013m));
        Assert.Equal(10, Cull.Freeing(found, 5m).Count());
    }

    [Fact]
    public void Whatever_the_rule_what_goes_has_a_reason_and_what_stays_has_none() =>
        Gen.Select(Gen.Int[0, 2000], Gen.Select(Gen.Int[0, 1500], Gen.Int[1, 60], Gen.Bool).Array[1, 12]).Sample((seed, stock) =>
        {
            var shop = new Shop { KeepRule = RandomKeepRules.Create(seed, metric: false) };
            var boards = stock.Index().Select(each => new CullBoard(Board($"B{each.Index}", each.Item.Item1, each.Item.Item2), each.Item.Item3)).ToList();
            var found = new Cull(shop, WorthRates.Default, Today, 730).Suggest(boards, NoLimits);
            return boards.TrueForAll(board =>
            {
                var ruling = KeepRuling.Of(shop.KeepRule, shop.Keep, board.Board.Species, board.Board.Size);
                var days = Today.DayNumber - DateOnly.FromDateTime(board.Board.LoggedAt.UtcDateTime).DayNumber;
                var mayGo = ruling.Entry?.Word != KeepWord.Always && (!ruling.IsKept || board.FitsDesign == false || days >= 730);
                return mayGo == found.Any(candidate => candidate.Board.Id == board.Board.Id);
            }) && found.Zip(found.Skip(1)).All(pair => pair.First.Reasons.Count >= pair.Second.Reasons.Count);
        });

    private static IReadOnlyList<CullCandidate> Suggest(Dictionary<string, decimal> excess, params CullBoard[] boards) =>
        new Cull(new Shop(), WorthRates.Default, Today, 730).Suggest(boards, excess);

    private static Board Board(string id, int days = 100, int length = 20) => new()
    {
        Id = id,
        Species = "white-ash",
        Size = new(Length.FromInches(1), Length.FromInches(4), Length.FromInches(length)),
        Place = "bin",
        LoggedAt = new DateTimeOffset(Today.AddDays(-days).ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
    };
}
