using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Recipes;

/// <summary>Plans of random shops that resaw, face-glue and refuse short blanks, each given to the auditor.</summary>
public sealed class RecipeShopTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromMilliseconds(40));

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_plan_passes_the_auditor(bool metric)
    {
        var faults = new List<string>();
        var recipes = new List<Recipe>();
        foreach (var seed in Enumerable.Range(1, 250))
        {
            var scale = seed % 5 == 0 ? ShopScale.Tiny : ShopScale.Smallest;
            var problem = RandomRecipes.Apply(RandomShops.Create(seed, new ShopKind(scale, MustBuy: seed % 2 == 1, metric)), seed, metric);
            var plan = Planner.Solve(problem, Limits);
            recipes.AddRange(plan.Boards.SelectMany(board => board.Pieces).OfType<PartPiece>().Select(piece => piece.Recipe));
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {finding}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        Assert.Contains(recipes, recipe => recipe.InRow > 1 && !recipe.Carried);
        Assert.Contains(recipes, recipe => recipe.Carried);
        Assert.Contains(recipes, recipe => recipe.Slices > 1);
        Assert.Contains(recipes, recipe => recipe.Layers == 2);
        Assert.Contains(recipes, recipe => recipe.Layers == 3);
        Assert.Contains(recipes, recipe => recipe is { Layers: > 1, Slices: > 1 });
    }
}
