using Xunit;

namespace Offcuts.Domain.Tests;

public class PanelMoistureTests
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    [Fact]
    public void Boards_alike_or_of_which_nothing_is_kept_track_are_not_warned_of()
    {
        Assert.Empty(Warnings((null, null), (null, null)));
        Assert.Empty(Warnings(("log 3", new(8, Today)), ("log 3", new(10, Today.AddDays(-180)))));
    }

    [Fact]
    public void Different_batches_are_warned_of() => Assert.Equal([WarningKind.MixedBatches], Warnings(("log 3", null), ("log 4", null)));

    [Fact]
    public void A_board_of_no_batch_among_others_may_be_of_another() => Assert.Equal([WarningKind.MixedBatches], Warnings(("log 3", null), (null, null)));

    [Fact]
    public void A_stale_reading_is_warned_of() =>
        Assert.Equal([WarningKind.StaleReadings], Warnings((null, new(8, Today)), (null, new(8, Today.AddDays(-181)))));

    [Fact]
    public void A_board_without_a_reading_among_others_is_warned_of() => Assert.Equal([WarningKind.StaleReadings], Warnings((null, new(8, Today)), (null, null)));

    [Fact]
    public void Readings_more_than_two_points_apart_are_warned_of() =>
        Assert.Equal([WarningKind.UnequalMoisture], Warnings((null, new(8, Today)), (null, new(10.1m, Today))));

    private static IEnumerable<WarningKind> Warnings(params (string?, MoistureReading?)[] boards) => PanelMoisture.Warnings(boards, Today, 180);
}
