using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class SpellingAndSlugTests
{
    [Theory]
    [InlineData("quantty", "quantity")]
    [InlineData("Quantity", "quantity")]
    [InlineData("sise", "size")]
    [InlineData("szie", "size")]
    [InlineData("nmae", "name")]
    [InlineData("manes", null)]
    [InlineData("colour", null)]
    [InlineData("", null)]
    public void Finds_the_word_that_was_meant(string word, string? meant) =>
        Assert.Equal(meant, Spelling.Nearest(word, ["name", "quantity", "size", "species"]));

    [Fact]
    public void One_slip_in_a_long_word_is_always_forgiven() =>
        Gen.Select(Gen.String[Gen.Char["abcdefgh"], 6, 30], Gen.Int[0, 5], Gen.Char["xyz"]).Sample((word, at, sign) =>
            Spelling.Nearest(word[..at] + sign + word[(at + 1)..], [word]) == word);

    [Theory]
    [InlineData("Hall bench", "hall-bench")]
    [InlineData("Poplar board, 3/4 x 3 1/2", "poplar-board-3-4-x-3-1-2")]
    [InlineData("  --A--  ", "a")]
    [InlineData("木", "")]
    public void Names_become_slugs(string name, string slug) => Assert.Equal(slug, Slug.Of(name));

    [Fact]
    public void A_slug_is_its_own_slug() => Gen.String.Sample(text => Slug.Of(Slug.Of(text)) == Slug.Of(text) && Slug.Of(text).Length <= 60);
}
