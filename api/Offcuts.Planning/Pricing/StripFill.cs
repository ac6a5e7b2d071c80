using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// The best use of a free extent for panel strips of one family. With k strips side by side the sum of their net widths is
/// T = min(R - k (edge + kerf), k widest), where R is the free extent plus one kerf; k is feasible if T is at least k narrowest.
/// The value counts the dearest rows first, each up to what it still needs: an upper bound that whole strips may miss by a little.
/// </summary>
internal sealed class StripFill
{
    private readonly StripFamily family;
    private readonly long kerf;
    private readonly List<(int Row, double PerTick, long Need)> rows;

    public StripFill(StripFamily family, long kerf, PriceList prices)
    {
        this.family = family;
        this.kerf = kerf;
        rows = [.. family.Rows
            .Where(row => prices.PerTick[row] > 0 && prices.Need[row] > 0)
            .Select(row => (row, prices.PerTick[row], prices.Need[row]))
            .OrderByDescending(entry => entry.Item2)];
    }

    public StripFamily Family => family;

    public bool IsWorthless => rows.Count == 0;

    /// <summary>Most strips that could be wanted.</summary>
    public int MostStrips => (int)Math.Min(10_000, rows.Sum(row => (row.Need / Math.Max(1, family.Narrowest)) + 1));

    /// <summary>Best value of strips on a free extent; each strip counts <paramref name="times"/> times (pieces in a row).</summary>
    public double Value(long free, int times, out int count)
    {
        count = 0;
        var best = 0.0;
        for (var k = 1; ; k++)
        {
            var net = free - (k * (family.Edge + kerf));
            if (net < k * family.Narrowest || net <= 0)
            {
                return best;
            }

            var total = Math.Min(net, k * family.Widest);
            var value = Greedy(total * times);
            if (value > best)
            {
                best = value;
                count = k;
            }

            if (net <= k * family.Widest)
            {
                return best;
            }
        }
    }

    /// <summary>
    /// Net widths for k strips on a free extent, with the rows they serve (<paramref name="times"/> pieces of each strip), the
    /// dearest row first and no wider than what is still needed.
    /// </summary>
    public List<(long Net, int[] Rows)> Lay(long free, int times, int count, long[] need)
    {
        var laid = new List<(long, int[])>();
        var total = Math.Min(free - (count * (family.Edge + kerf)), count * family.Widest);
        for (var left = count; left > 0; left--)
        {
            var open = rows.Where(row => need[row.Row] > 0).Select(row => row.Row).ToList();
            if (open.Count == 0)
            {
                break;
            }

            // As wide as it may be or as it is needed; but never so that less than one more strip stays wanted.
            var widest = Math.Min(family.Widest, total - ((left - 1) * family.Narrowest));
            var wanted = times == 1 ? need[open[0]] : open.Max(row => need[row]);
            var net = Math.Min(widest, wanted);
            if (wanted > net && wanted - net < family.Narrowest)
            {
                net = wanted - family.Narrowest;
            }

            net = Math.Max(net, family.Narrowest);
            laid.Add((net, Serve(net, times, need)));
            total -= net;
        }

        return laid;
    }

    private int[] Serve(long net, int times, long[] need)
    {
        var served = new List<int>();
        for (var piece = 0; piece < times; piece++)
        {
            var row = rows.Where(entry => need[entry.Row] > 0)
                .OrderByDescending(entry => Math.Min(need[entry.Row], net) * entry.PerTick).Select(entry => entry.Row)
                .DefaultIfEmpty(-1).First();
            if (row < 0)
            {
                break;
            }

            need[row] -= net;
            served.Add(row);
        }

        return [.. served];
    }

    private double Greedy(long total)
    {
        var value = 0.0;
        foreach (var (_, perTick, need) in rows)
        {
            var taken = Math.Min(need, total);
            value += taken * perTick;
            total -= taken;
            if (total <= 0)
            {
                break;
            }
        }

        return value;
    }
}
