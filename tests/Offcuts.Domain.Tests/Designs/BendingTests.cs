using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BendingTests
{
    private const string Table = """
        name: Table
        unit: in
        parameters:
          top: 30in..48in by 1/4in default 36in
          inner: top - 2 * leg
          leg: 1 3/4in
          slats: 0..7
        choices:
          back: [sheet, solid]
        parts:
          - {name: Rail, quantity: 2, size: 3/4 x 2 1/2 x inner, species: ash}
          - {name: Slat, quantity: slats, size: 1/2 x 1..2 x inner / 2, species: ash}
          - {name: Sheet back, size: 1/4 x 10 x inner, species: birch plywood, when: back = sheet}
          - {name: Drawer front, size: "3/4 x 4..top / 6 x min(inner, 20)", species: ash, optional: drawer}
        panels:
          - {name: Top, size: 3/4 x 12 x top, species: ash, strips: 2..leg * 2}
          - {name: Solid back, size: 1/2 x 10 x inner, species: ash, when: back = solid}
        items:
          - {name: Button, quantity: 2 * ceil(top / 8in), price: 0.5}
        """;

    [Fact]
    public void A_design_is_read_with_its_numbers_at_the_defaults()
    {
        var design = Parse(Table);
        Assert.Equal(["top", "slats"], design.Parameters.Select(parameter => parameter.Name));
        Assert.Equal((73, Length.FromInches(36).Ticks), (design.Parameters[0].Count, design.Parameters[0].Default));
        Assert.Equal(Length.FromInches(32, 1, 2), design.Parts[0].Finished.Length);
        Assert.Equal(0, design.Parts[1].Quantity);
        Assert.Equal((Length.FromInches(2), Length.FromInches(3, 1, 2)), (design.Panels[0].NarrowestStrip, design.Panels[0].WidestStrip));
        Assert.Equal(10, design.Items[0].Quantity);
        Assert.Equal(["back", "drawer"], design.Choices.Select(choice => choice.Name));
        Assert.Equal(Length.FromInches(6), design.Parts[3].Most!.Value.Width);
    }

    [Fact]
    public void Values_and_answers_give_a_design_that_leaves_nothing_open()
    {
        var design = Parse(Table);
        var set = new Dictionary<string, long> { ["top"] = Length.FromInches(40).Ticks, ["slats"] = 3 };
        var at = DesignInstance.At(design, set, (pointer, detail) => Assert.Fail($"{pointer}: {detail}")).Design;
        Assert.False(at.Bends);
        Assert.Equal(Length.FromInches(36, 1, 2), at.Parts[0].Finished.Length);
        Assert.Equal((3, Length.FromInches(18, 1, 4)), (at.Parts[1].Quantity, at.Parts[1].Finished.Length));
        Assert.Equal(Length.FromInches(2), at.Parts[1].Most!.Value.Width);

        var ways = Alternatives.Of(at, SpeciesCatalogue.Default.All);
        Assert.Equal(["sheet yes", "sheet no", "solid yes", "solid no"], ways.Select(way => string.Join(' ', way.Answers.Values)));
        Assert.Equal(["Rail", "Slat", "Sheet back", "Drawer front"], ways[0].Design.Parts.Select(part => part.Name));
        Assert.Equal(["Top", "Solid back"], ways[3].Design.Panels.Select(panel => panel.Name));
        Assert.All(ways, way => Assert.Empty(DesignRules.Check(way.Design)));
        Assert.All(ways, way => Assert.False(way.Design.HasAlternatives));
    }

    [Fact]
    public void What_is_made_none_times_is_left_out_and_places_are_those_of_the_original()
    {
        var at = DesignInstance.At(Parse(Table), new Dictionary<string, long>(), (_, _) => Assert.Fail("no fault"));
        Assert.Equal([0, 2, 3], at.Parts);
        Assert.Equal("#/parts/2/size", at.Original("#/parts/1/size"));
        var solid = at.Then(DesignInstance.With(at.Design, "back", "solid"));
        Assert.Equal([0, 3], solid.Parts);
        Assert.Equal("#/parts/3/size", solid.Original("#/parts/1/size"));
        Assert.Equal("#/panels/1", solid.Original("#/panels/1"));
    }

    [Fact]
    public void An_earlier_species_is_a_choice_before_a_later_one()
    {
        var design = Parse("""
            name: Box
            groups: [{name: box, one species: yes, species: [cherry, walnut], in order: yes}]
            parts:
              - {name: Side, quantity: 2, size: 1/2in x 4in x 12in, group: box}
              - {name: Peg, quantity: 4, size: 1/2in x 1/2in x 2in, species: [ash, cherry, walnut], in order: yes}
            """);
        var ways = Alternatives.Of(design, SpeciesCatalogue.Default.All);
        Assert.Equal(6, ways.Count);
        Assert.Equal(["black-cherry", "black-cherry", "black-cherry", "black-walnut", "black-walnut", "black-walnut"], ways.Select(way => Assert.Single(way.Design.Groups[0].Species)));
        Assert.Equal([1, 2, 3, 1, 2, 3], ways.Select(way => way.Design.Parts[1].Species.Count));
        Assert.Equal("ash or black cherry", ways[1].Answers["species of Peg"].Replace("white ", "", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("inner: top - 2 * leg", "inner: top - 2 * lag", "#/parameters/inner", 5, "did you mean leg?")]
    [InlineData("leg: 1 3/4in", "leg: inner / 2", "#/parameters/inner", 5, "inner -> leg -> inner")]
    [InlineData("leg: 1 3/4in", "leg: 20in", "#/parts/0/size", 11, "a length is above zero")]
    [InlineData("leg: 1 3/4in", "leg: 15in", "#/parts/0/size", 11, "top = 30\"")]
    [InlineData("30in..48in by 1/4in default 36in", "30in..48in by 1/4in default 36 1/8in", "#/parameters/top", 4, "give 36\" or 36 1/4\"")]
    [InlineData("30in..48in by 1/4in default 36in", "48in..30in", "#/parameters/top", 4, "from the smaller to the larger")]
    [InlineData("30in..48in by 1/4in default 36in", "30..48 1/2", "#/parameters/top", 4, "write the unit")]
    [InlineData("30in..48in by 1/4in default 36in", "30in..48in by 1/4in of 36in", "#/parameters/top", 4, "'1/4in of 36in'")]
    [InlineData("30in..48in by 1/4in default 36in", "30in..100in by 1/128in", "#/parameters/top", 4, "not exact")]
    [InlineData("30in..48in by 1/4in default 36in", "0.1mm..4m by 0.1mm", "#/parameters/top", 4, "larger step")]
    [InlineData("slats: 0..7", "in: 0..7", "#/parameters/in", 7, "something else")]
    [InlineData("slats: 0..7", "2slats: 0..7", "#/parameters/2slats", 7, "cannot be the name")]
    [InlineData("quantity: slats", "quantity: slats - 1", "#/parts/1/quantity", 12, "-1: give 0 to")]
    [InlineData("quantity: slats", "quantity: top / 2", "#/parts/1/quantity", 12, "gives a length")]
    [InlineData("quantity: slats", "quantity: slats / 2", "#/parts/1/quantity", 12, "7/2, where a whole number is needed: use floor, ceil or round. (at ")]
    [InlineData("x 2 1/2 x inner", "x 2 1/2 x inner * 2 1/2in", "#/parts/0/size", 11, "an area")]
    [InlineData("x 2 1/2 x inner", "x 2 1/2 xinner", "#/parts/0/size", 11, "2 of 3 numbers")]
    [InlineData("when: back = sheet", "when: back = sheets", "#/parts/2/when", 13, "no answer to 'back'")]
    [InlineData("when: back = sheet", "when: bakc = sheet", "#/parts/2/when", 13, "Did you mean back?")]
    [InlineData("when: back = sheet", "when: sheet", "#/parts/2/when", 13, "no condition")]
    [InlineData("back: [sheet, solid]", "back: [sheet]", "#/choices/back", 9, "give 2 to")]
    [InlineData("name: Solid back", "name: Rail", "#/panels/1/name", 17, "give each its own name")]
    [InlineData("4..top / 6 x", "7..top / 6 x", "#/parts/3/size", 14, "smaller first")]
    public void What_cannot_be_is_a_fault_with_its_line(string right, string wrong, string pointer, int line, string why)
    {
        Assert.Contains(right, Table, StringComparison.Ordinal);
        var fault = Assert.Throws<OffcutsException>(() => Parse(Table.Replace(right, wrong, StringComparison.Ordinal))).Faults[0];
        Assert.Equal((pointer, line), (fault.Pointer, fault.Line));
        Assert.Contains(why, fault.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_size_without_names_is_read_as_in_every_design()
    {
        var design = Parse("""
            name: Mixed
            unit: mm
            parameters: {top: 30in..48in}
            parts:
              - {name: A, size: 3/4in x 2 x 36, species: ash}
              - {name: B, size: 19 x 60 x top - 100, species: ash}
              - {name: C, size: 3/4in x 2 x top, species: ash}
            """);
        Assert.Equal(SizeText.Parse("3/4 x 2 x 36in", DisplayUnit.Inch), design.Parts[0].Finished);
        Assert.Equal(new Dimensions(Length.FromMillimetres(19), Length.FromMillimetres(60), Length.FromMillimetres(662)), design.Parts[1].Finished);
        // The inch of one side holds for the bare side beside it, as in every size.
        Assert.Equal(SizeText.Parse("3/4 x 2 x 30in", DisplayUnit.Inch), design.Parts[2].Finished);
        Assert.Equal(289, design.Parameters[0].Count);
    }

    private static Design Parse(string text) => DesignDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default);
}
