using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Keeping;

/// <summary>Plans of random shops with random keep rules.</summary>
public sealed class KeepRuleShopTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMilliseconds(40));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_plan_passes_the_auditor(bool metric)
    {
        var faults = new List<string>();
        var (small, thrown) = (0, 0);
        foreach (var seed in Enumerable.Range(1, 250))
        {
            var scale = seed % 5 == 0 ? ShopScale.Tiny : ShopScale.Smallest;
            var problem = RandomKeepRules.Apply(RandomShops.Create(seed, new ShopKind(scale, MustBuy: seed % 2 == 1, metric)), seed, metric);
            // Half of them with pieces that grow and extra pieces: these move and divide what is left over.
            problem = seed % 2 == 0 ? RandomFreedom.Add(problem, seed) : problem;
            var plan = Planner.Solve(problem, Limits);
            var byKeepSize = KeepSizes.From(problem.Shop.Keep);
            small += plan.Boards.Count(board => board.Pieces.OfType<LeftoverPiece>().Any(piece => !byKeepSize.Include(SizeOf(board, piece))));
            thrown += plan.Boards.Count(board => board.Defects.Count == 0 && board.Pieces.OfType<WastePiece>().Any(piece => byKeepSize.Include(SizeOf(board, piece))));
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {finding}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        // Rules that decide as the keep size does would make this check hollow.
        Assert.True(small > 20 && thrown > 20, $"{small} boards gave leftovers below the keep size, {thrown} waste above it.");
    }

    /// <summary>What is kept decides which of the cheapest plans is taken, never what it costs.</summary>
    [Fact]
    public void A_keep_rule_never_touches_the_money()
    {
        var seed = 0;
        Relation.Costs(1, problem => RandomKeepRules.Apply(problem, seed++, metric: false));
    }

    /// <summary>Of a board that is 20 in long, a part of 7 in leaves 12 in: with a rule it is kept from 10 in on of walnut, and never of ash.</summary>
    [Theory]
    [InlineData("black-walnut", true)]
    [InlineData("white-ash", false)]
    [InlineData("black-cherry", false)]
    public void Leftovers_are_what_the_rule_keeps(string species, bool isKept)
    {
        var rule = new KeepRule([
            new(KeepWord.Never, ["white-ash"], []),
            new(KeepWord.Always, ["black-walnut"], [new(Length: Length.FromInches(10))])]);
        var problem = new PlanningProblem
        {
            Shop = new Shop { KeepRule = rule },
            Design = new Design { Name = "one", Parts = [new Part { Name = "Rail", Finished = Inches(4, 8), Species = [species] }] },
            Stock = [new Board { Id = "K7M", Species = species, Size = Inches(4, 20) with { Width = Length.FromInches(4, 1, 8) }, Surface = Surface.Surfaced, LoggedAt = DateTimeOffset.UnixEpoch }],
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(2)));
        Assert.Empty(Auditor.Audit(problem, plan));
        // 20 less 8 1/2 of blank less 1/8 of kerf: 11 3/8 in, under the shop's keep size of 12 in.
        Assert.Equal(isKept ? 1 : 0, plan.Boards[0].Pieces.OfType<LeftoverPiece>().Count());
        Assert.Equal(isKept, plan.WorthReturned > Money.Zero);
    }

    private static Dimensions SizeOf(BoardCut board, Piece piece) => new(board.Size.Thickness, piece.At.Width, piece.At.Length);

    private static Dimensions Inches(long width, long length) => new(Length.FromInches(0, 3, 4), Length.FromInches(width), Length.FromInches(length));
}
