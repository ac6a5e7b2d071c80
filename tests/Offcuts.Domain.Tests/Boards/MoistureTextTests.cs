using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class MoistureTextTests
{
    [Theory]
    [InlineData("8%", "8 %")]
    [InlineData("8", "8 %")]
    [InlineData(" 8.5 % MC ", "8.5 %")]
    [InlineData("8.5% on 2026-11-01", "8.5 % on 2026-11-01")]
    [InlineData("120 %, 2026-11-01", "120 % on 2026-11-01")]
    public void Reads_readings_as_makers_write_them(string text, string said) => Assert.Equal(said, MoistureText.Format(Read(text)));

    [Theory]
    [InlineData(null, "no moisture reading")]
    [InlineData("", "no moisture reading")]
    [InlineData("dry", "no moisture reading")]
    [InlineData("-8%", "no moisture reading")]
    [InlineData("8,5%", "no moisture reading")]
    [InlineData("0%", "more than 0")]
    [InlineData("300.1%", "at most 300")]
    [InlineData("8.25%", "to a tenth")]
    [InlineData("8% on 2026-02-30", "not a date")]
    [InlineData("8% on 0026-02-03", "the day on which")]
    public void Says_what_is_wrong_with_a_reading(string? text, string saying)
    {
        Assert.False(MoistureText.TryParse(text, out _, out var error));
        Assert.Contains(saying, error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_is_read_the_same() => Gen.Select(Gen.Int[1, 3000], Gen.Int[-20_000, 50_000]).Sample((tenths, day) =>
    {
        var reading = new MoistureReading(tenths / 10m, day > 0 ? new DateOnly(1900, 1, 1).AddDays(day) : null);
        return reading.Fault() is null && Read(MoistureText.Format(reading)) == reading;
    });

    [Fact]
    public void A_reading_without_a_day_was_taken_on_the_day_on_which_it_is_told()
    {
        var today = new DateOnly(2026, 6, 1);
        Assert.Equal(today, new MoistureReading(8).Dated(today).On);
        Assert.Equal(31, new MoistureReading(8, new DateOnly(2026, 5, 1)).Dated(today).Age(today));
    }

    [Fact]
    public void A_leftover_is_as_damp_as_the_board_was()
    {
        var reading = new MoistureReading(8, new DateOnly(2026, 5, 1));
        var board = new Board { Id = "A", Species = "white-ash", Size = new(Length.FromInches(1), Length.FromInches(4), Length.FromInches(40)), Moisture = reading, LoggedAt = DateTimeOffset.UnixEpoch };
        Assert.Equal(reading, board.Leftover(new AddedPiece(board.Size with { Length = Length.FromInches(10) }, default), board.Size, "plan").Moisture);
    }

    private static MoistureReading Read(string text) => MoistureText.TryParse(text, out var reading, out var error) ? reading : throw new ArgumentException(error);
}
