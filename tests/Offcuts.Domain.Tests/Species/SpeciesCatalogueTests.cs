using Xunit;

namespace Offcuts.Domain.Tests;

public class SpeciesCatalogueTests
{
    private static readonly SpeciesCatalogue Catalogue = SpeciesCatalogue.Default;

    // Rows that are no single species, and rows whose coefficients do not follow from the shrinkage given beside them (see the table's header).
    private static readonly string[] OutsideTheIdentity = ["mahogany", "african-mahogany", "teak"];

    [Theory]
    [InlineData("walnut", "black-walnut")]
    [InlineData("Black Walnut", "black-walnut")]
    [InlineData("black-walnut", "black-walnut")]
    [InlineData("WHITE OAK", "white-oak")]
    [InlineData("sugar maple", "hard-maple")]
    [InlineData("poplar", "yellow-poplar")]
    [InlineData("birch ply", "birch-plywood")]
    [InlineData("mdf", "mdf")]
    [InlineData("oak", null)]
    [InlineData("", null)]
    public void Finds_by_id_name_or_alias(string name, string? id) => Assert.Equal(id, Catalogue.Find(name)?.Id);

    [Theory]
    [InlineData("oak", "red oak or white oak")]
    [InlineData("walnutt", "walnut")]
    [InlineData("cherrry", "cherry")]
    [InlineData("zzzzzzzz", null)]
    public void Suggests_what_was_meant(string word, string? suggestion)
    {
        var found = Catalogue.Suggest(word);
        Assert.True(suggestion is null ? found is null : found!.StartsWith(suggestion, StringComparison.Ordinal), found);
    }

    [Fact]
    public void Knows_its_classes()
    {
        Assert.Equal(["hardwood", "paint-grade", "sheet", "softwood"], Catalogue.Classes.Order(StringComparer.Ordinal));
        Assert.True(Catalogue.IsClass("paint-grade"));
        Assert.False(Catalogue.IsClass("walnut"));
        Assert.All(Catalogue.All, species => Assert.NotEmpty(species.Classes));
        Assert.All(Catalogue.All, species => Assert.Single(species.Classes, name => name is "hardwood" or "softwood" or "sheet"));
    }

    [Fact]
    public void No_name_stands_for_two_species()
    {
        Assert.Equal(Catalogue.All.Count, Catalogue.All.Select(species => species.Id).Distinct().Count());
        foreach (var species in Catalogue.All)
        {
            Assert.Equal(species.Id, Slug.Of(species.Id));
            Assert.All([species.Id, species.Name, .. species.Aliases], name => Assert.Equal(species.Id, Catalogue.Find(name)?.Id));
            Assert.False(Catalogue.IsClass(species.Id));
        }
    }

    [Fact]
    public void A_shops_own_species_are_added_or_replace()
    {
        var own = new Species { Id = "plum", Name = "garden plum", Classes = ["hardwood"] };
        var heavier = Catalogue.Find("walnut")! with { SpecificGravity = 0.6m };
        var catalogue = Catalogue.With([own, heavier]);
        Assert.Equal("plum", catalogue.Find("Garden Plum")?.Id);
        Assert.Equal(0.6m, catalogue.Find("walnut")?.SpecificGravity);
        Assert.Equal(Catalogue.All.Count + 1, catalogue.All.Count);
        Assert.Null(Catalogue.Find("plum"));
    }

    // Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), Tables 13-5 and 5-3b.
    [Theory]
    [InlineData("black-walnut", 0.00190, 0.00274, 0.55)]
    [InlineData("hard-maple", 0.00165, 0.00353, 0.63)]
    [InlineData("red-oak", 0.00158, 0.00369, 0.63)]
    [InlineData("white-oak", 0.00180, 0.00365, 0.68)]
    [InlineData("black-cherry", 0.00126, 0.00248, 0.50)]
    [InlineData("yellow-poplar", 0.00158, 0.00289, 0.42)]
    [InlineData("eastern-white-pine", 0.00071, 0.00212, 0.35)]
    [InlineData("western-redcedar", 0.00111, 0.00234, 0.32)]
    public void Carries_the_handbooks_numbers(string id, decimal radial, decimal tangential, decimal gravity)
    {
        var species = Catalogue.Find(id)!;
        Assert.Equal((radial, tangential, gravity), (species.RadialCoefficient, species.TangentialCoefficient, species.SpecificGravity));
    }

    // C = (S/F) / (100 - S (F - 10)/F) with shrinkage S in % from fibre saturation F, based on the size at 10 %: the same handbook's
    // way from shrinkage to coefficient. A number mistyped in either column falls out. Tolerance: one in the last printed digit.
    [Fact]
    public void Coefficients_follow_from_the_shrinkage()
    {
        var checkedRows = 0;
        foreach (var species in Catalogue.All.Where(row => !OutsideTheIdentity.Contains(row.Id)))
        {
            foreach (var (shrinkage, coefficient) in new[]
            {
                (species.RadialShrinkage, species.RadialCoefficient), (species.TangentialShrinkage, species.TangentialCoefficient),
            })
            {
                if (shrinkage is { } s && coefficient is { } c)
                {
                    var f = species.FibreSaturation ?? 30m;
                    var expected = s / f / (100m - (s * (f - 10m) / f));
                    Assert.True(Math.Abs(expected - c) <= 0.000011m, $"{species.Id}: {s} % gives {expected:0.00000}, the table has {c}");
                    checkedRows++;
                }
            }
        }

        Assert.True(checkedRows >= 100, $"only {checkedRows} coefficients were checked");
    }

    // The handbook's worked example, p. 13-15: a flat-grain white fir board 232 mm wide moves 1.705 mm from 8 to 11 %.
    [Fact]
    public void White_fir_moves_as_in_the_handbooks_example() =>
        Assert.Equal(1.705m, decimal.Round(232m * Catalogue.Find("white fir")!.TangentialCoefficient!.Value * (11 - 8), 3));
}
