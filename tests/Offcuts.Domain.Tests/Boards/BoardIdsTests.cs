using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BoardIdsTests
{
    [Fact]
    public void No_id_comes_twice()
    {
        var ids = Enumerable.Range(1, 50_000).Select(number => BoardIds.FromNumber(number)).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(ids.Take(8000), id => Assert.Equal(3, id.Length));
        Assert.All(ids.Skip(8000), id => Assert.Equal(6, id.Length));
    }

    [Fact]
    public void Large_numbers_have_ids_of_their_own() =>
        Gen.Long[1, long.MaxValue].Select(Gen.Long[1, long.MaxValue]).Sample((a, b) =>
            a == b || BoardIds.FromNumber(a) != BoardIds.FromNumber(b));

    // Pairs that are confused in handwriting: common practice of label makers, from memory.
    [Theory]
    [InlineData("0O")]
    [InlineData("1IL")]
    [InlineData("2Z")]
    [InlineData("5S")]
    [InlineData("8B")]
    [InlineData("6G")]
    [InlineData("UV")]
    [InlineData("MN")]
    [InlineData("CG")]
    public void At_most_one_of_signs_that_look_alike_is_used(string alike) =>
        Assert.True(alike.Count(sign => BoardIds.Signs.Contains(sign, StringComparison.Ordinal)) <= 1);

    [Fact]
    public void Neighbours_differ_in_more_than_the_last_sign() =>
        Assert.All(Enumerable.Range(1, 7999), number =>
            Assert.NotEqual(BoardIds.FromNumber(number)[..2], BoardIds.FromNumber(number + 1)[..2]));

    [Fact]
    public void Every_id_is_read_back_however_it_is_written() =>
        Gen.Long[1, long.MaxValue].Sample(number =>
        {
            var id = BoardIds.FromNumber(number);
            var written = $" {id[..1].ToLowerInvariant()}-{id[1..].ToLowerInvariant().Replace('6', 'g')} ";
            return BoardIds.TryNormalise(written, out var read) && read == id;
        });

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" - ")]
    [InlineData("K7")]
    [InlineData("K7MQ")]
    [InlineData("K70")]
    [InlineData("ÄÖÜ")]
    public void What_can_be_no_id_is_refused(string? written) => Assert.False(BoardIds.TryNormalise(written, out _));

    [Fact]
    public void Numbers_begin_at_one() => Assert.Throws<ArgumentOutOfRangeException>(() => BoardIds.FromNumber(0));
}
