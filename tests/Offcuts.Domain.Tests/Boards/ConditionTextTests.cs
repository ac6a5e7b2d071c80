using Xunit;

namespace Offcuts.Domain.Tests;

public class ConditionTextTests
{
    private static readonly Length Quarter = Length.FromInches(0, 1, 4);
    private static readonly Length Eighth = Length.FromInches(0, 1, 8);

    [Fact]
    public void Reads_warp_as_makers_write_it()
    {
        Assert.Equal(new Warp(Quarter, default, Eighth, default), Read("bow 1/4in, cup 1/8in"));
        Assert.Equal(new Warp(Quarter, Eighth, default, default), Read(" Crook 1/8 ,BOW 6.35mm"));
        Assert.Equal(new Warp(default, default, default, Length.FromInches(1, 1, 4)), Read("twist 1-1/4\""));
        Assert.Equal(default, Read("flat"));
        Assert.Equal(default, Read("bow 0"));

        static Warp Read(string text) => WarpText.TryParse(text, DisplayUnit.Inch, out var warp, out var error) ? warp : throw new ArgumentException(error);
    }

    [Theory]
    [InlineData("", "not a warp")]
    [InlineData("1/4", "not a warp")]
    [InlineData("wind 1/4", "not a warp")]
    [InlineData("bow 1/4 cup 1/8", "not a unit")]
    [InlineData("bow 1/4, bow 1/8", "twice")]
    [InlineData("bow a bit", "not a length")]
    [InlineData("bow 1/4,", "not a warp")]
    public void Says_what_is_wrong_with_a_warp(string text, string saying)
    {
        Assert.False(WarpText.TryParse(text, DisplayUnit.Inch, out _, out var error));
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bow 1/4\", cup 1/8\"")]
    [InlineData("crook 3/16\", twist 1/2\"")]
    [InlineData("flat")]
    public void Prints_a_warp_as_it_can_be_read(string text)
    {
        Assert.True(WarpText.TryParse(text, DisplayUnit.Millimetre, out var warp, out _));
        Assert.Equal(text, WarpText.Format(warp, DisplayUnit.Inch));
    }

    [Theory]
    [InlineData("sound", EndState.Sound, EndState.Sound, "sound")]
    [InlineData("Both checked", EndState.Checked, EndState.Checked, "checked")]
    [InlineData("left checked, right sound", EndState.Checked, EndState.Sound, "left checked, right sound")]
    [InlineData("right SOUND", EndState.Unknown, EndState.Sound, "left unknown, right sound")]
    [InlineData("left checked", EndState.Checked, EndState.Unknown, "left checked, right unknown")]
    public void Reads_and_prints_ends(string text, EndState left, EndState right, string printed)
    {
        Assert.True(EndsText.TryParse(text, out var ends, out _));
        Assert.Equal(new Ends(left, right), ends);
        Assert.Equal(printed, EndsText.Format(ends));
    }

    [Theory]
    [InlineData("")]
    [InlineData("left")]
    [InlineData("rotten")]
    [InlineData("right sound, left sound")]
    public void Says_how_to_write_ends(string text)
    {
        Assert.False(EndsText.TryParse(text, out _, out var error));
        Assert.Contains("left checked, right sound", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Says_what_a_piece_loses_rounded_up_to_what_can_be_measured()
    {
        var loss = new Loss(Length.FromTicks((127 * 8) + 1), Length.FromTicks(1));
        var warp = new Warp(Eighth, Eighth, Eighth, default);
        Assert.Equal("flatten: 9/64\" counted for bow and cup; sawn 1/64\" wider for crook", LossText.Of(loss, DisplayUnit.Inch, warp));
        Assert.Equal("flatten: 3.2 mm counted for warp; sawn 0.1 mm wider for crook", LossText.Of(loss, DisplayUnit.Millimetre));
        Assert.Equal("sawn 1/64\" wider for crook", LossText.Of(loss with { Thickness = default }, DisplayUnit.Inch));
        Assert.Equal("", LossText.Of(null, DisplayUnit.Inch));
    }

    [Fact]
    public void A_warp_must_suit_its_board()
    {
        var size = SizeText.Parse("1 x 6 x 96", DisplayUnit.Inch);
        Assert.Empty(WarpRules.Faults(BoardKind.Solid, size, new Warp(Quarter, Quarter, Eighth, Eighth)));
        Assert.Empty(WarpRules.Faults(BoardKind.Sheet, size, default));
        Assert.Contains("never planed", Assert.Single(WarpRules.Faults(BoardKind.Sheet, size, new Warp(Quarter, default, default, default))).Detail, StringComparison.Ordinal);
        var much = WarpRules.Faults(BoardKind.Solid, size, new Warp(Length.FromInches(25), default, Length.FromInches(2), Length.FromTicks(-1)));
        Assert.Equal(["bow", "cup", "twist"], much.Select(fault => fault.Member));
    }
}
