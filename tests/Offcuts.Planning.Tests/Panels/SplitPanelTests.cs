using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Panels;

/// <summary>The arithmetic of sub-panels that share out a panel's width, on random cases against the rules in plain sums.</summary>
public class SplitPanelTests
{
    [Fact]
    public void What_is_shared_out_is_what_is_lacking_and_no_sub_panel_outgrows_the_planer() => ForAll((split, made, most, needed) =>
    {
        var need = new long[made.Length];
        split.ShareOut(made, need);
        var lacking = needed - made.Sum(each => Math.Min(each, most));
        Assert.Equal(Math.Max(0, lacking), need.Sum());
        Assert.All(need.Zip(made), each => Assert.True(each.First == 0 || (each.First > 0 && each.Second + each.First <= most)));
    });

    [Fact]
    public void What_is_spare_can_go_and_a_tick_more_cannot() => ForAll((split, made, most, needed) =>
    {
        for (var row = 0; row < made.Length; row++)
        {
            if (split.Spare(row, made) is var spare && made.Sum(each => Math.Min(each, most)) >= needed)
            {
                Assert.InRange(spare, 0, made[row]);
                Assert.True(Reach(row, spare) >= needed);
                Assert.True(spare == made[row] || Reach(row, spare + 1) < needed);
            }

            long Reach(int from, long less) => made.Select((each, at) => Math.Min(at == from ? each - less : each, most)).Sum();
        }
    });

    [Fact]
    public void Widths_add_up_and_are_as_equal_as_the_strips_and_the_planer_let_them() => ForAll((split, made, most, needed) =>
    {
        if (made.Sum(each => Math.Min(each, most)) < needed)
        {
            return;
        }

        var widths = split.Widths(made);
        Assert.Equal(needed, widths.Sum());
        Assert.All(widths.Zip(made), each => Assert.InRange(each.First, 0, Math.Min(each.Second, most)));

        // One that is narrower than another by more than a tick could not be wider.
        Assert.All(widths.Zip(made), each => Assert.True(each.First >= widths.Max() - 1 || each.First == Math.Min(each.Second, most)));
    });

    /// <summary>Two to five sub-panels with what their strips reach, the planer's width and what the panel needs.</summary>
    private static void ForAll(Action<SplitPanel, long[], long, long> check)
    {
        foreach (var seed in Enumerable.Range(1, 2000))
        {
            var dice = new Dice(seed, metric: true);
            var (count, most) = (dice.From(2, 5), dice.From(20, 60));
            var needed = dice.From((most * (count - 1)) + 1, most * count);
            var rows = Enumerable.Range(0, count).Select(at => new StripRow(
                at, "top", Appearance.Clear, Ticks(20), ["white-ash"], 0, 1, at + 1, Ticks((needed + count - 1 - at) / count), Ticks(most), Ticks(100), Ticks(dice.From(1, 20)), Ticks(60))).ToList();
            check(new SplitPanel(rows), [.. rows.Select(_ => (long)dice.From(0, most + 10))], most, needed);
        }
    }

    private static Length Ticks(long ticks) => Length.FromTicks(ticks);
}
