using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BoardTotalsTests
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    private static readonly Gen<Board> AnyBoard = Gen.Select(
        Gen.Int[0, 2], Gen.Long[1, 40_000], Gen.Long[1, 900_000], Gen.Int[1, 5], Gen.Int[0, 3], Gen.Int[0, 2000],
        (species, thickness, length, quantity, place, days) => new Board
        {
            Id = "X",
            Species = $"s{species}",
            Size = new(Length.FromTicks(thickness), Length.FromTicks(40_000), Length.FromTicks(length)),
            Quantity = quantity,
            Place = place == 0 ? null : $"rack {place}",
            Batch = place == 1 ? "log 3" : null,
            LoggedAt = Logged(Today.AddDays(-days)),
        });

    [Fact]
    public void Whatever_they_are_added_up_by_no_board_is_left_out_or_told_twice() => Gen.Select(AnyBoard.List[0, 30], Gen.Enum<TotalsBy>(), Gen.Enum<DisplayUnit>())
        .Sample((boards, by, unit) =>
        {
            var totals = new BoardTotals(unit, Today, id => id, board => new Money(board.Size.Length.Ticks));
            var (parts, whole) = (totals.Of(boards, by), totals.Of(boards));
            Assert.Equal(boards.Sum(board => board.Quantity), whole.Boards);
            Assert.Equal(boards.Sum(board => board.Quantity * BoardMeasure.CubicMetres(board.Size)), whole.CubicMetres);
            Assert.Equal(boards.Sum(board => board.Quantity * board.Size.Length.Ticks), whole.Worth.MinorUnits);
            Assert.Equal(
                (whole.Boards, whole.CubicMetres, whole.Worth.MinorUnits),
                (parts.Sum(part => part.Boards), parts.Sum(part => part.CubicMetres), parts.Sum(part => part.Worth.MinorUnits)));
            Assert.Distinct(parts.Select(part => (part.Name, part.From)));
        });

    [Fact]
    public void A_length_lies_in_just_the_band_that_says_so() => Gen.Select(Gen.Long[1, Length.MaxTicks], Gen.Enum<DisplayUnit>()).Sample((ticks, unit) =>
    {
        var (below, above) = LengthBands.Around(Length.FromTicks(ticks), unit);
        Assert.True((below ?? Length.Zero).Ticks <= ticks && (above is null || ticks < above.Value.Ticks));
    });

    [Theory]
    [InlineData(TotalsBy.Species, "s1: 1|s2: 2")]
    [InlineData(TotalsBy.Thickness, "3/4\": 1|1\": 2")]
    [InlineData(TotalsBy.Length, "under 12\": 1|24\" to 36\": 2")]
    [InlineData(TotalsBy.Place, "rack 2: 2|no place: 1")]
    [InlineData(TotalsBy.Batch, "log 3: 2|no batch: 1")]
    [InlineData(TotalsBy.Age, "under 3 months: 1|2 to 3 years: 2")]
    public void Totals_are_told_in_an_order_that_can_be_read(TotalsBy by, string expected)
    {
        Board[] boards =
        [
            new()
            {
                Id = "A", Species = "s2", Size = new(Length.FromInches(1), Length.FromInches(6), Length.FromInches(24)), Quantity = 2, Place = "rack 2", Batch = "log 3",
                LoggedAt = Logged(Today.AddYears(-2)),
            },
            new() { Id = "B", Species = "s1", Size = new(Length.FromInches(0, 3, 4), Length.FromInches(6), Length.FromInches(11)), LoggedAt = Logged(Today) },
        ];
        var totals = new BoardTotals(DisplayUnit.Inch, Today, id => id, _ => Money.Zero).Of(boards, by);
        Assert.Equal(expected, string.Join('|', totals.Select(total => $"{total.Name}: {total.Boards}")));
    }

    private static DateTimeOffset Logged(DateOnly day) => new(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
}
