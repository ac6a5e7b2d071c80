using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests.Recipes;

/// <summary>More ways to make a part can only help: the bound and the costs of random shops must say so too.</summary>
public sealed class RecipeRelationTests
{
    [Fact]
    public void A_resaw_is_never_dearer() => Relation.NeverDearer(problem => problem with { Shop = problem.Shop with { ResawHeight = Length.FromInches(8) } });

    // A part of several species would have to agree on one: that is no help.
    [Fact]
    public void Layers_are_never_dearer() => Relation.NeverDearer(problem => problem with
    {
        Design = problem.Design with
        {
            Parts = [.. problem.Design.Parts.Select(part => part.Species.Count == 1 && !part.HasTolerance ? part with { Layers = 3 } : part)],
        },
    });

    [Fact]
    public void Allowing_short_blanks_is_never_dearer_than_warning() =>
        Relation.NeverDearer(problem => problem with { Shop = problem.Shop with { ShortBlanks = ShortBlanks.Allow } });
}
