using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Panels;

/// <summary>Strips of several panels side by side, against every way to share out the room tick by tick.</summary>
public class StripMixTests
{
    private const long Most = 40;

    [Fact]
    public void No_way_to_share_out_the_room_is_worth_more_and_one_is_worth_as_much()
    {
        foreach (var seed in Enumerable.Range(1, 300))
        {
            var (fills, kerf) = Create(seed);
            var mix = new StripMix(fills.Index().Select(entry => (entry.Index, entry.Item.Fill, entry.Item.Times)), 0, Most);
            for (var free = kerf; free <= Most; free++)
            {
                var best = fills.Aggregate(new double[free + 1], (known, each) =>
                    [.. Enumerable.Range(0, (int)free + 1).Select(room => Enumerable.Range(0, room + 1).Max(part => known[room - part] + each.Fill.Value(part, each.Times, out _)))])[free];
                Assert.True(best == mix.Value(free), $"seed {seed}, {free} free: {mix.Value(free)}, best {best}");
                var chosen = mix.Choose(free).ToList();
                Assert.True(chosen.Sum(each => each.Extent) <= free);
                Assert.Equal(best, chosen.Sum(each => fills[each.Family].Fill.Value(each.Extent, each.Times, out _)));
            }
        }
    }

    private static (List<(StripFill Fill, int Times)> Fills, int Kerf) Create(int seed)
    {
        var dice = new Dice(seed, metric: true);
        var kerf = dice.From(0, 2);
        var rows = Enumerable.Range(0, dice.From(2, 5)).Select(index => new StripRow(
            index, "panel", default, Length.Zero, [], 0, 1, 1, Length.FromTicks(dice.From(1, 16)), Length.FromTicks(16), Length.Zero, Length.Zero, Length.Zero)).ToList();
        var prices = Pricing.PriceList.FromDuals(rows, [.. rows.Select(row => (double)dice.From(0, 60))], [.. rows.Select(row => row.Needed)], 0);
        var families = rows.Chunk(dice.From(1, 2)).Select(chunk => (Rows: chunk, Narrowest: dice.From(1, 6))).Select(each =>
            new StripFamily([.. each.Rows.Select(row => row.Index)], 1, 0, 1, dice.From(0, 2), each.Narrowest, each.Narrowest + dice.From(0, 7)));
        return ([.. families.Select(family => (new StripFill(family, kerf, prices), dice.From(1, 3)))], kerf);
    }
}
