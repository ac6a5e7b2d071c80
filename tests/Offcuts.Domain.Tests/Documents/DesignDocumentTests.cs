using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class DesignDocumentTests
{
    private const string Bench = """
        name: Hall bench
        description: A bench for the hall.
        unit: in
        groups:
          - name: seat
            one species: yes
            species: [walnut, cherry]
        parts:
          - name: Leg
            quantity: 4
            size: 1 3/4 x 1 3/4 x 17 1/4     # thickness x width x length, finished
            species: [walnut, paint grade]
            appearance: clear
            grain: fixed
            group: seat
          - name: Bottom
            size: 6mm x 300 x 900
            species: birch plywood
            grain: free
            appearance: paint
            tolerates: [knot, nail hole]
        panels:
          - name: Top
            size: 7/8 x 14 x 42
            strips: 2 to 5
            group: seat
        items:
          - name: Brass screws, 1 1/4 in
            quantity: 16
            price: 0.35
            supplier: Hinge and Pin
        tags: [hall, seating]
        hours: 12.5
        """;

    [Fact]
    public void Reads_a_design_as_its_maker_writes_it()
    {
        var design = Parse(Bench);
        Assert.Equal("Hall bench", design.Name);
        Assert.Equal("A bench for the hall.", design.Description);
        Assert.Equal(["hall", "seating"], design.Tags);
        Assert.Equal(12.5m, design.Hours);
        var group = Assert.Single(design.Groups);
        Assert.True(group.OneSpecies);
        Assert.Equal(["black-walnut", "black-cherry"], group.Species);
        var leg = design.Parts[0];
        Assert.Equal(4, leg.Quantity);
        Assert.Equal(SizeText.Parse("1 3/4 x 1 3/4 x 17 1/4in", DisplayUnit.Inch), leg.Finished);
        Assert.Equal(["black-walnut", "paint-grade"], leg.Species);
        Assert.Equal((Appearance.Clear, Grain.Fixed, "seat"), (leg.Appearance, leg.Grain, leg.Group));
        var bottom = design.Parts[1];
        Assert.Equal(1, bottom.Quantity);
        Assert.Equal(["birch-plywood"], bottom.Species);
        Assert.Equal(300m, bottom.Finished.Width.Millimetres);
        Assert.Equal((Appearance.Paint, Grain.Free), (bottom.Appearance, bottom.Grain));
        Assert.Equal(["knot", "nail hole"], bottom.Tolerates);
        Assert.Empty(leg.Tolerates);
        var top = Assert.Single(design.Panels);
        Assert.Equal((Length.FromInches(2), Length.FromInches(5)), (top.NarrowestStrip, top.WidestStrip));
        Assert.Empty(top.Species);
        Assert.Equal(new BoughtItem("Brass screws, 1 1/4 in", 16, new Money(35), "Hinge and Pin"), Assert.Single(design.Items));
    }

    [Fact]
    public void Reads_what_is_left_open()
    {
        const string Slat = """
            name: Back
            groups:
              - {name: back, batch: fewest}
            parts:
              - name: Slat
                quantity: 5..9
                size: 1/2..5/8 x 1 1/2 to 2 x 30in
                spacing: {span: 36in, ends: yes}
                spares: 2
                extras: leftovers
                species: ash
            """;
        var design = Parse(Slat);
        var slat = Assert.Single(design.Parts);
        Assert.Equal(BatchChoice.Fewest, design.Groups[0].Batch);
        Assert.Equal((5, 9, 2), (slat.Quantity, slat.MostQuantity, slat.Spares));
        Assert.Equal(new Spacing(Length.FromInches(36), true), slat.Spacing);
        Assert.Equal(ExtraSource.Leftovers, slat.Extras);
        Assert.Equal(SizeText.Parse("1/2 x 1 1/2 x 30in", DisplayUnit.Inch), slat.Finished);
        Assert.Equal(SizeText.Parse("5/8 x 2 x 30in", DisplayUnit.Inch), slat.Most);
    }

    [Fact]
    public void Reads_the_same_from_JSON()
    {
        const string Json = """
            {
            	"name": "Shelf", "unit": "mm",
            	"parts": [{ "name": "Side \"A\" \/ left", "quantity": 2, "size": "18 x 300 x 900", "species": ["mdf"] }],
            	"items": [{ "name": "Pegs", "quantity": 8, "price": 0.1 }]
            }
            """;
        var design = DesignDocument.Parse(Json, DisplayUnit.Inch, SpeciesCatalogue.Default);
        Assert.Equal("Side \"A\" / left", design.Parts[0].Name);
        Assert.Equal(900m, design.Parts[0].Finished.Length.Millimetres);
        Assert.Equal(new Money(10), design.Items[0].UnitPrice);
    }

    [Fact]
    public void The_callers_unit_holds_where_the_document_names_none()
    {
        const string Text = "name: Rail\nparts: [{name: Rail, size: 18 x 40 x 600, species: ash}]";
        Assert.Equal(600m, DesignDocument.Parse(Text, DisplayUnit.Millimetre, SpeciesCatalogue.Default).Parts[0].Finished.Length.Millimetres);
        Assert.Equal(600m, DesignDocument.Parse(Text, DisplayUnit.Inch, SpeciesCatalogue.Default).Parts[0].Finished.Length.Inches);
    }

    [Theory]
    [InlineData("hours: 12.5", "hours: a day", "#/hours", 33, "for instance 6.5")]
    [InlineData("[hall, seating]", "[hall, Hall]", "#/tags/1", 32, "there twice")]
    [InlineData("quantity: 4", "quantty: 4", "#/parts/0/quantty", 10, "Did you mean 'quantity'?")]
    [InlineData("quantity: 4", "quantity: four", "#/parts/0/quantity", 10, "whole number")]
    [InlineData("quantity: 4", "quantity: \"4\"", "#/parts/0/quantity", 10, "without quotation marks")]
    [InlineData("quantity: 4", "quantity: 0", "#/parts/0/quantity", 10, "from 1 to 10000")]
    [InlineData("quantity: 4", "quantity: 10001", "#/parts/0/quantity", 10, "from 1 to 10000")]
    [InlineData("quantity: 4", "quantity: 4\n    quantity: 5", "#/parts/0/quantity", 11, "there twice")]
    [InlineData("quantity: 4", "quantity:", "#/parts/0/quantity", 10, "no value")]
    [InlineData("x 17 1/4 ", "x 17 1/3 ", "#/parts/0/size", 11, "Write 17 21/64\"")]
    [InlineData("x 17 1/4 ", "", "#/parts/0/size", 11, "2 of 3 numbers")]
    [InlineData("quantity: 4", "quantity: 4..4", "#/parts/0/quantity", 10, "from the smaller to the larger")]
    [InlineData("quantity: 4", "quantity: 4..10001", "#/parts/0/quantity", 10, "from 1 to 10000")]
    [InlineData("quantity: 4", "quantity: 4..", "#/parts/0/quantity", 10, "whole number")]
    [InlineData("quantity: 4", "quantity: 4\n    spacing: {span: 6in}", "#/parts/0/spacing", 11, "do not fit")]
    [InlineData("quantity: 4", "quantity: 4\n    spacing: {ends: yes}", "#/parts/0/spacing", 11, "'span' is missing")]
    [InlineData("quantity: 4", "quantity: 4\n    extras: offcuts", "#/parts/0/extras", 11, "waste, leftovers")]
    [InlineData("x 17 1/4 ", "x 18..17 1/4 ", "#/parts/0/size", 11, "from the smaller to the larger")]
    [InlineData("[walnut, paint grade]", "[walnutt]", "#/parts/0/species/0", 12, "Did you mean walnut?")]
    [InlineData("[walnut, paint grade]", "oak", "#/parts/0/species", 12, "red oak or white oak")]
    [InlineData("[walnut, paint grade]", "{a: b}", "#/parts/0/species", 12, "a list of values")]
    [InlineData("appearance: clear", "appearance: shiny", "#/parts/0/appearance", 13, "clear, sound knots, paint")]
    [InlineData("grain: fixed", "grain: loose", "#/parts/0/grain", 14, "fixed, free")]
    [InlineData("group: seat\n  - name: Bottom", "group: seet\n  - name: Bottom", "#/parts/0/group", 15, "Did you mean seat?")]
    [InlineData("one species: yes", "one species: perhaps", "#/groups/0/one%20species", 6, "yes or no")]
    [InlineData("one species: yes", "one species: \"yes\"", "#/groups/0/one%20species", 6, "yes or no")]
    [InlineData("strips: 2 to 5", "strips: 5 to 2", "#/panels/0/strips", 25, "smaller to the larger")]
    [InlineData("strips: 2 to 5", "species: [mdf]", "#/panels/0/species", 25, "solid wood")]
    [InlineData("strips: 2 to 5", "species: [sheet]", "#/panels/0/species", 25, "solid wood")]
    [InlineData("price: 0.35", "price: 0,35", "#/items/0/price", 30, "decimal point")]
    [InlineData("price: 0.35", "price: 0.355", "#/items/0/price", 30, "2 decimal digits")]
    [InlineData("price: 0.35", "price: -1", "#/items/0/price", 30, "negative")]
    [InlineData("unit: in", "unit: cubits", "#/unit", 3, "in or mm")]
    [InlineData("name: Top", "name: Leg", "#/panels/0/name", 23, "its own name")]
    [InlineData("name: Hall bench\n", "", "#", 1, "'name' is missing")]
    [InlineData("    group: seat\nitems", "items", "#/panels/0/species", 23, "No species")]
    public void Names_the_place_of_each_fault(string good, string bad, string pointer, int line, string saying)
    {
        var at = Bench.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var fault = Assert.Single(Faults(Bench.Remove(at, good.Length).Insert(at, bad)));
        Assert.Equal((pointer, line), (fault.Pointer, fault.Line));
        Assert.Contains(saying, fault.Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_all_faults_at_once()
    {
        var faults = Faults("nmae: x\nparts:\n- {name: A, size: 1 x 2, species: yew}\n- {nam: B, size: 1 x 2 x 3, species: ash}\n- ash");
        Assert.Equal(
            ["#", "#/parts/0/size", "#/parts/0/species", "#/parts/1", "#/parts/1/nam", "#/parts/2", "#/nmae"],
            faults.Select(fault => fault.Pointer).OrderBy(pointer => pointer == "#/nmae").ThenBy(pointer => pointer, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("   \n# only a comment\n", "empty")]
    [InlineData("just words", "should be keys")]
    [InlineData("- a\n- b", "should be keys")]
    [InlineData("name: [a", "not YAML")]
    [InlineData("name: \"a", "not YAML")]
    [InlineData("a: b: c", "not YAML")]
    [InlineData("name: a\n---\nname: b", "second document")]
    [InlineData("name: &a b", "Anchors")]
    [InlineData("name: *a", "Anchors")]
    [InlineData("name: !!str b", "tags")]
    [InlineData("? [a, b]\n: c", "where a key should be")]
    [InlineData("name: A\n\"0123456789012345678901234567890123456789012345678901234567890\": b", "no key is so long")]
    [InlineData("name: A\nparts: {}", "should be a list")]
    [InlineData("name: A", "no parts, no panels and no items")]
    public void Refuses_what_is_no_design(string text, string saying) =>
        Assert.Contains(saying, Assert.Single(Faults(text)).Detail, StringComparison.Ordinal);

    [Fact]
    public void Aliases_of_aliases_and_deep_nesting_cost_nothing()
    {
        var bomb = "a: &a [x,x,x]\n" + string.Concat(Enumerable.Range(0, 20).Select(i => $"b{i}: &b{i} [*a,*a,*a,*a]\n"));
        Assert.Contains("Anchors", Assert.Single(Faults(bomb)).Detail, StringComparison.Ordinal);
        foreach (var deep in new[] { new string('[', 100_000), string.Concat(Enumerable.Repeat("{a: ", 100_000)), string.Concat(Enumerable.Repeat("- ", 50_000)) })
        {
            Assert.Contains("nested too deeply", Assert.Single(Faults("name: " + (deep[0] == '-' ? "\n  " : "") + deep)).Detail, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_document_of_1_MB_is_read_and_not_a_character_more()
    {
        const string Start = "name: A\nparts: [{name: B, size: 1 x 2 x 3, species: ash}] #";
        Assert.Equal("A", Parse(Start.PadRight(1_048_576, '-')).Name);
        Assert.Contains("1048577", Assert.Single(Faults(Start.PadRight(1_048_577, '-'))).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_thousand_parts_are_read_and_not_one_more()
    {
        Assert.Equal(2000, Parse(Parts(2000)).Parts.Count);
        Assert.Contains("at most 2000", Assert.Single(Faults(Parts(2001))).Detail, StringComparison.Ordinal);

        static string Parts(int count) => "name: A\nparts:\n" + string.Concat(
            Enumerable.Range(0, count).Select(i => $"- {{name: P{i}, size: 1 x 2 x 3, species: ash}}\n"));
    }

    private static Design Parse(string text) => DesignDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default);

    private static IReadOnlyList<InputFault> Faults(string text)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse(text));
        Assert.Equal(ErrorCode.Invalid, problem.Code);
        Assert.Contains("The design cannot be read", problem.Message, StringComparison.Ordinal);
        return problem.Faults;
    }
}
