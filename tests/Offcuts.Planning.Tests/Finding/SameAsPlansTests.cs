using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Finding;
using Offcuts.Planning.Fitting;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Finding;

/// <summary>
/// What is found agrees with plans that the auditor passes: of every board by itself a plan makes the piece just where it is found, and as many as it is
/// said to give.
/// </summary>
public class SameAsPlansTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMilliseconds(200));

    [Theory]
    [InlineData(7000)]
    [InlineData(7100)]
    [InlineData(7200)]
    [InlineData(7300)]
    public void A_board_is_found_just_where_a_plan_can_use_it(int first)
    {
        var (found, not) = (0, 0);
        foreach (var seed in Enumerable.Range(first, 20))
        {
            var kind = RandomShops.Kind(seed, seed % 5 == 0 ? ShopScale.Workshop : ShopScale.Smallest);
            var shop = RandomShops.Create(seed, kind);
            shop = seed % 3 == 0 ? shop : RandomCondition.Applied(seed % 3 == 1 ? shop : RandomDefects.Add(shop, seed), seed);
            foreach (var part in shop.Design.Parts.Where(part => part.Layers == 1).Take(2))
            {
                var problem = shop with { Offers = [], Design = new Design { Name = "find", Parts = [Alone(part)] } };
                var fits = BoardFinder.Find(problem, int.MaxValue);
                Assert.True(fits.Fits.Count > 0 || fits.Nearest.Count == Math.Min(5, problem.Stock.Count(board => part.Species.Contains(board.Species))));
                foreach (var board in problem.Stock.Where(board => part.Species.Contains(board.Species)))
                {
                    var fit = fits.Fits.SingleOrDefault(each => each.Board.Id == board.Id);
                    var made = Made(problem, board, 1);
                    Assert.True(made == (fit is null ? 0 : 1), $"seed {seed}: {part.Name} of {board.Id}: a plan makes {made}, found {fit?.Gives ?? 0}.");
                    (found, not) = fit is null ? (found, not + 1) : (found + 1, not);
                    if (fit is not null)
                    {
                        Assert.True(Made(problem, board, fit.Gives + 1) <= fit.Gives, $"seed {seed}: of {board.Id} a plan makes more than {fit.Gives} {part.Name}.");
                    }
                }
            }
        }

        Assert.True(found >= 20 && not >= 20, $"Only {found} were found and {not} not.");
    }

    /// <summary>However many other boards there are: a search among all of them, and a look at one of them, say the same of it.</summary>
    [Theory]
    [InlineData(7400)]
    [InlineData(7500)]
    public void A_board_gives_as_many_as_it_is_said_to_be_of_use_for(int first)
    {
        var (several, turned) = (0, 0);
        foreach (var seed in Enumerable.Range(first, 40))
        {
            var shop = RandomShops.Create(seed, RandomShops.Kind(seed, seed % 2 == 0 ? ShopScale.Workshop : ShopScale.Tiny));
            shop = seed % 3 == 0 ? shop : RandomCondition.Applied(seed % 3 == 1 ? shop : RandomDefects.Add(shop, seed), seed);
            foreach (var part in shop.Design.Parts.Take(3).Select(Alone).Select(part => part with { Layers = 1, Grain = seed % 4 == 0 ? Grain.Free : part.Grain }))
            {
                var problem = shop with { Offers = [], Design = new Design { Name = "find", Parts = [part] } };
                var found = BoardFinder.Find(problem, int.MaxValue).Fits.ToDictionary(fit => fit.Board.Id, fit => fit.Gives, StringComparer.Ordinal);
                foreach (var board in problem.Stock)
                {
                    var use = BoardUses.Of(board, problem.Design, problem.Shop, problem.Rates).Sum(each => each.Count);
                    Assert.True(use == found.GetValueOrDefault(board.Id), $"seed {seed}: {board.Id} is of use for {use} {part.Name}, found {found.GetValueOrDefault(board.Id)}.");
                    (several, turned) = (several + (use > 1 ? 1 : 0), turned + (use > 1 && part.Grain == Grain.Free ? 1 : 0));
                }
            }
        }

        Assert.True(several >= 50 && turned >= 10, $"Only {several} gave several, {turned} of them of a part that may be turned.");
    }

    private static int Made(PlanningProblem problem, Board board, int count)
    {
        var alone = problem with
        {
            Stock = [board with { Quantity = 1 }],
            Design = problem.Design with { Parts = [problem.Design.Parts[0] with { Quantity = count }] },
        };
        var plan = Planner.Solve(alone, Limits);
        Assert.Empty(Auditor.Audit(alone, plan));
        return count - plan.MissingCount;
    }

    // Its finish group is not asked for, nor more pieces and spares.
    private static Part Alone(Part part) => part with { Quantity = 1, Group = null, MostQuantity = null, Spares = 0, Spacing = null };
}
