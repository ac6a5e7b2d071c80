using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class KeepRuleDocumentTests
{
    private const string Rule = """
        unit: in
        rule:
          - never: [pine, softwood]
          - never: any
            under: {length: 6, section: 1/2}
          - always: Walnut
          - keep: hardwood
            at least:
              - {length: 12, width: 2}
              - {length: 915mm, section: 8 cm2}
        """;

    [Fact]
    public void Reads_a_rule_as_makers_write_it()
    {
        var rule = Parse(Rule.Replace("pine", "ponderosa pine", StringComparison.Ordinal));
        Assert.Equal([KeepWord.Never, KeepWord.Never, KeepWord.Always, KeepWord.Keep], rule.Entries.Select(entry => entry.Word));
        Assert.Equal(["ponderosa-pine", "softwood"], rule.Entries[0].Species);
        Assert.Null(rule.Entries[1].Species);
        Assert.Equal(Length.FromInches(6), rule.Entries[1].Sizes[0].Length);
        Assert.Equal(["black-walnut"], rule.Entries[2].Species);
        Assert.Empty(rule.Entries[2].Sizes);
        Assert.Equal(2, rule.Entries[3].Sizes.Count);
        Assert.Equal(800m, rule.Entries[3].Sizes[1].Section!.Value.SquareMillimetres);
        Assert.Empty(KeepRules.Check(rule));

        var resolved = rule.Resolved(SpeciesCatalogue.Default);
        Assert.Contains("douglas-fir", resolved.Entries[0].Species!);
        Assert.DoesNotContain("white-ash", resolved.Entries[0].Species!);
        Assert.Null(resolved.Entries[1].Species);
    }

    [Fact]
    public void A_rule_may_have_no_entries() => Assert.Empty(Parse("rule: []").Entries);

    [Theory]
    [InlineData("always: Walnut", "allways: Walnut", "#/rule/2", "one of never, always and keep")]
    [InlineData("always: Walnut", "always: Wallnut", "#/rule/2/always", "Did you mean walnut?")]
    [InlineData("always: Walnut", "always: Walnut\n    under: {length: 6}", "#/rule/2/under", "not known")]
    [InlineData("under: {length: 6, section: 1/2}", "at least: {length: 6}", "#/rule/1/at%20least", "not known")]
    [InlineData("length: 6, section: 1/2", "length: six", "#/rule/1/under/length", "not a length")]
    [InlineData("length: 6, section: 1/2", "section: much", "#/rule/1/under/section", "no section")]
    [InlineData("length: 6, section: 1/2", "section: 0", "#/rule/1/under/section", "more than zero")]
    [InlineData("{length: 12, width: 2}", "{}", "#/rule/3/at%20least/0", "names no size")]
    [InlineData("{length: 12, width: 2}", "{height: 2}", "#/rule/3/at%20least/0/height", "not known")]
    [InlineData("unit: in", "unit: ell", "#/unit", "give in or mm")]
    public void Names_the_place_of_each_fault(string good, string bad, string pointer, string saying)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse(Rule.Replace("pine", "ponderosa pine", StringComparison.Ordinal).Replace(good, bad, StringComparison.Ordinal)));
        Assert.Contains(problem.Faults, fault => fault.Pointer == pointer && fault.Detail.Contains(saying, StringComparison.Ordinal));
        Assert.All(problem.Faults, fault => Assert.NotNull(fault.Line));
    }

    [Fact]
    public void What_is_to_be_kept_needs_sizes()
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse("rule: [{keep: hardwood}]"));
        Assert.Contains("at least", Assert.Single(problem.Faults).Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1 1/4", DisplayUnit.Inch, "1.25 sq in")]
    [InlineData("1.25 sq in", DisplayUnit.Inch, "1.25 sq in")]
    [InlineData("5/4 in2", DisplayUnit.Inch, "1.25 sq in")]
    [InlineData("800", DisplayUnit.Millimetre, "8 cm2")]
    [InlineData("800 mm2", DisplayUnit.Inch, "1.24 sq in")]
    [InlineData("8cm²", DisplayUnit.Millimetre, "8 cm2")]
    [InlineData("8 sq cm", DisplayUnit.Millimetre, "8 cm2")]
    public void Sections_are_read_in_every_unit(string text, DisplayUnit unit, string said)
    {
        Assert.True(SectionText.TryParse(text, unit, out var section, out var error), error);
        Assert.Equal(said, SectionText.Format(section, unit));
    }

    [Theory]
    [InlineData("")]
    [InlineData("1/0")]
    [InlineData("sq in")]
    [InlineData("-1")]
    [InlineData("1 sq ft")]
    [InlineData("2000000 mm2")]
    public void What_is_no_section_is_refused(string text) => Assert.False(SectionText.TryParse(text, DisplayUnit.Inch, out _, out _));

    private static KeepRule Parse(string text) => KeepRuleDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default);
}
