using CsCheck;
using Offcuts.Documents;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Domain.Tests;

/// <summary>
/// Rules that makers state (from a survey of forum threads, blogs and magazine letters): at least 12 in long; over 12 x 3 1/2 in, smaller for figured wood; pine always
/// goes, exotics are kept even 1 x 1/4 in; 6 in at least, 4 in wide always, else 1 1/4 sq in of section, 1/2 x 1/2 in if 8 ft long.
/// </summary>
public class KeepRulingTests
{
    private static readonly string[] Woods = ["white-ash", "black-cherry", "black-walnut", "birch-plywood", "teak"];

    private const string Shop = """
        unit: in
        rule:
          - never: any
            under: {length: 6}
          - never: eastern white pine
          - always: [walnut]
            at least: {width: 1, thickness: 1/4}
          - keep: hardwood
            at least:
              - {width: 4}
              - {width: 2, thickness: 3/4}
              - {section: 1 1/4 sq in}
              - {length: 8ft, width: 1/2, thickness: 1/2}
        """;

    [Theory]
    [InlineData("white-ash", "3/4 x 5 x 5 1/2", "rule 1 lets wood of any kind go that is shorter than 6\"; it is 5 1/2\" long")]
    [InlineData("eastern-white-pine", "2 x 8 x 96", "rule 2 lets eastern white pine go, whatever its size")]
    [InlineData("black-walnut", "1/4 x 1 x 6", null, "rule 3 always keeps black walnut from 1\" wide and 1/4\" thick")]
    [InlineData("black-walnut", "3/16 x 4 x 6", null, "rule 4 keeps hardwood from 4\" wide or from 2\" wide and 3/4\" thick or from 1.25 sq in in section or from 96\" long, 1/2\" wide and 1/2\" thick")]
    [InlineData("white-ash", "1/2 x 3 x 12", null, null)]
    [InlineData("white-ash", "1/2 x 2 x 12", "rule 4 keeps hardwood only from 4\" wide or from 2\" wide and 3/4\" thick or from 1.25 sq in in section or from 96\" long, 1/2\" wide and 1/2\" thick; it is 2\" wide")]
    [InlineData("white-ash", "1/2 x 1/2 x 96", null, null)]
    [InlineData("douglas-fir", "1/4 x 2 x 12", null, "the shop keeps what is at least 12\" long, 2\" wide and 1/4\" thick")]
    [InlineData("douglas-fir", "1/8 x 2 x 11", "the shop keeps only what is at least 12\" long, 2\" wide and 1/4\" thick; it is 11\" long and 1/8\" thick")]
    public void A_piece_is_kept_or_let_go_with_the_reason(string species, string piece, string? whyNot, string? why = null)
    {
        var shop = new Shop { KeepRule = KeepRuleDocument.Parse(Shop, DisplayUnit.Inch, SpeciesCatalogue.Default).Resolved(SpeciesCatalogue.Default) };
        // The words of the rule as they were written, where its classes still are classes.
        var written = KeepRuleDocument.Parse(Shop, DisplayUnit.Inch, SpeciesCatalogue.Default);
        var size = SizeText.Parse(piece, DisplayUnit.Inch);
        var ruling = KeepRuling.Of(shop.KeepRule, shop.Keep, species, size);
        Assert.Equal(whyNot is null, ruling.IsKept);
        var said = new KeepText(DisplayUnit.Inch, SpeciesCatalogue.Default.NameOf).Of(ruling.AsWritten(written), size);
        if ((whyNot ?? why) is { } expected)
        {
            Assert.Equal(expected, said);
        }

        Assert.Equal(ruling.IsKept, shop.KeptOf(species).Include(size));
    }

    [Fact]
    public void Without_a_rule_the_shops_keep_size_holds()
    {
        var shop = new Shop();
        Assert.True(shop.KeptOf("white-ash").Include(shop.Keep));
        Assert.False(shop.KeptOf("white-ash").Include(shop.Keep with { Length = shop.Keep.Length - Length.FromTicks(1) }));
        Assert.Equal(0, KeepRuling.Of(shop.KeepRule, shop.Keep, "white-ash", shop.Keep).Number);
    }

    [Fact]
    public void A_shaving_is_not_kept_even_of_what_is_always_kept()
    {
        var rule = new KeepRule([new(KeepWord.Always, ["black-walnut"], [])]);
        var shop = new Shop { KeepRule = rule, Keep = new(Length.FromInches(1), Length.FromInches(10), Length.FromInches(100)) };
        Assert.True(shop.KeptOf("black-walnut").Include(KeepRule.Smallest));
        Assert.False(shop.KeptOf("black-walnut").Include(KeepRule.Smallest with { Thickness = KeepRule.Smallest.Thickness - Length.FromTicks(1) }));
    }

    [Fact]
    public void The_sizes_that_plans_go_by_are_those_that_the_rule_decides_for() => Pieces.Sample((seed, piece, species) =>
    {
        var shop = new Shop { KeepRule = RandomKeepRules.Create(seed, metric: false) };
        return shop.KeptOf(species).Include(piece) == KeepRuling.Of(shop.KeepRule, shop.Keep, species, piece).IsKept;
    }, iter: 20_000);

    [Fact]
    public void What_is_larger_than_a_kept_piece_is_kept_too() => Gen.Select(Pieces, Gen.Int[0, 400], Gen.Int[0, 400], Gen.Int[0, 100]).Sample((one, longer, wider, thicker) =>
    {
        var (seed, piece, species) = one;
        var shop = new Shop { KeepRule = RandomKeepRules.Create(seed, metric: true) };
        var larger = new Dimensions(piece.Thickness + Length.FromSixtyFourths(thicker), piece.Width + Length.FromSixtyFourths(wider), piece.Length + Length.FromSixtyFourths(longer));
        return !shop.KeptOf(species).Include(piece) || shop.KeptOf(species).Include(larger);
    }, iter: 20_000);

    private static readonly Gen<(int Seed, Dimensions Piece, string Species)> Pieces = Gen.Select(
        Gen.Int[0, 5000], Gen.Int[4, 160], Gen.Int[8, 640], Gen.Int[60, 2200], Gen.Int[0, Woods.Length - 1],
        (seed, thickness, width, length, wood) => (seed, new Dimensions(Length.FromSixtyFourths(thickness), Length.FromSixtyFourths(width), Length.FromSixtyFourths(length)), Woods[wood]));
}
