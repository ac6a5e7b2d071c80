using Xunit;

namespace Offcuts.Domain.Tests;

public class DefectKindsTests
{
    [Theory]
    [InlineData("knot", "knot", true)]
    [InlineData("knot", "Knots", true)]
    [InlineData("knots", "knot, loose", true)]
    [InlineData("loose knot", "knot", false)]
    [InlineData("knot", "loose knot", false)]
    [InlineData("nail hole", "Nail holes", true)]
    [InlineData("stain", "knot", false)]
    [InlineData("", "knot", false)]
    public void A_kind_is_tolerated_by_its_first_words(string tolerated, string kind, bool holds) =>
        Assert.Equal(holds, DefectKinds.Tolerates([tolerated], kind));

    [Theory]
    [InlineData("nail", true)]
    [InlineData("knot with a Screw", true)]
    [InlineData("metal?", true)]
    [InlineData("staples", true)]
    [InlineData("nail in a nail hole", true)]
    [InlineData("nail hole", false)]
    [InlineData("iron stain", false)]
    [InlineData("pin knot", false)]
    [InlineData("split", false)]
    public void Metal_is_told_from_what_it_left_behind(string kind, bool metal)
    {
        Assert.Equal(metal, DefectKinds.HoldMetal(kind));
        Assert.Equal(!metal, DefectKinds.Tolerates([kind], kind));
    }

    [Theory]
    [InlineData("knot, loose")]
    [InlineData("Worm holes")]
    [InlineData("end checks")]
    [InlineData("nails")]
    [InlineData("")]
    public void Usual_words_need_no_advice(string kind) => Assert.Null(DefectKinds.Advice(kind));

    [Theory]
    [InlineData("knto", "'knto' is no usual word for a defect: did you mean 'knot'? As it is, only parts that tolerate just that may contain it.")]
    [InlineData("Nial", "'Nial' is no usual word for a defect: did you mean 'nail'? As it is, only parts that tolerate just that may contain it.")]
    [InlineData("xylograph", "'xylograph' is no usual word for a defect: only parts that tolerate just that may contain it.")]
    public void Other_words_get_the_nearest_as_advice(string kind, string advice) => Assert.Equal(advice, DefectKinds.Advice(kind));

    [Fact]
    public void A_design_that_tolerates_metal_is_refused()
    {
        var size = new Dimensions(Length.FromInches(1), Length.FromInches(2), Length.FromInches(10));
        var fault = Assert.Single(DesignRules.Check(new Design
        {
            Name = "box",
            Parts = [new Part { Name = "side", Finished = size, Species = ["white-ash"], Tolerates = ["knot", "nails"] }],
        }));
        Assert.Equal("#/parts/0/tolerates/1", fault.Pointer);
        Assert.Contains("a blade meets the metal", fault.Detail, StringComparison.Ordinal);
    }
}
