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
    /// The free extents, each with one kerf for every strip, between which the value grows evenly: where a number of strips begins to fit, is as wide as may be, or
    /// has all that a row needs. Ascending for each number of strips; no more than the extent given.
    /// </summary>
    /// <param name="most">The largest extent, with one kerf.</param>
    /// <param name="times">Pieces in a row.</param>
    public IEnumerable<long> Breaks(long most, int times)
    {
        var enough = new List<long>();
        foreach (var (_, _, need) in rows)
        {
            enough.Add((enough.Count > 0 ? enough[^1] : 0) + need);
        }

        // Where a row's need is no multiple of what a tick of a rip gives, its last tick gives less.
        var wanted = enough.SelectMany(need => new[] { need / times, (need + times - 1) / times }).Distinct().ToList();
        for (var count = 1L; count == 1 || (count - 1) * family.Widest < wanted[^1]; count++)
        {
            // Widths that fewer strips can have take less room with fewer.
            var (least, edges) = (Math.Max(count * family.Narrowest, ((count - 1) * family.Widest) + 1), count * (family.Edge + kerf));
            foreach (var net in wanted.Where(need => need > least && need < count * family.Widest).Prepend(least).Append(count * family.Widest))
            {
                if (net + edges > most)
                {
                    break;
                }

                yield return net + edges;
            }

            if (least + edges > most)
            {
                yield break;
            }
        }
    }

    /// <summary>
    /// Net widths of the strips on a free extent that are worth most, with the rows they serve (<paramref name="times"/> pieces of
    /// each strip), no wider than what is still needed; takes them off the need.
    /// </summary>
    public List<(long Net, int[] Rows)> Lay(long free, int times, long[] need, out double most)
    {
        var (best, after) = (new List<(long, int[])>(), need);
        most = 0;
        for (var count = 1; free - (count * (family.Edge + kerf)) >= count * family.Narrowest && count <= MostStrips; count++)
        {
            var rest = (long[])need.Clone();
            var laid = Lay(Math.Min(free - (count * (family.Edge + kerf)), count * family.Widest), times, count, rest);
            var value = rows.Sum(row => (Math.Max(0, need[row.Row]) - Math.Max(0, rest[row.Row])) * row.PerTick);
            if (value > most)
            {
                (best, most, after) = (laid, value, rest);
            }
        }

        Array.Copy(after, need, need.Length);
        return best;
    }

    private List<(long Net, int[] Rows)> Lay(long total, int times, int count, long[] need)
    {
        var laid = new List<(long, int[])>();
        for (var left = count; left > 0; left--)
        {
            // As wide as it may be or as it is needed; but never so that less than one more strip stays wanted.
            var widest = Math.Min(family.Widest, total - ((left - 1) * family.Narrowest));
            var most = times == 1 ? Most(need, widest) : rows.Select(row => row.Row).DefaultIfEmpty(-1).MaxBy(row => row < 0 ? 0 : need[row]);
            if (most < 0 || need[most] <= 0)
            {
                break;
            }

            var net = Math.Min(widest, need[most] + Math.Min(family.Room, Others(most, need).Sum(row => need[row])));
            var lacking = need[most] - net;
            if (lacking > 0 && lacking < family.Narrowest && lacking > Others(most, need).Count() * family.Room)
            {
                net = need[most] - family.Narrowest;
            }

            net = Math.Max(net, family.Narrowest);
            laid.Add((net, Serve(net, times, need)));
            total -= net;
        }

        return laid;
    }

    /// <summary>The row to which a strip of a width is worth most; -1 if nothing is needed.</summary>
    private int Most(long[] need, long width) => rows.Where(row => need[row.Row] > 0)
        .OrderByDescending(row => Math.Min(need[row.Row], width) * row.PerTick).Select(row => row.Row).DefaultIfEmpty(-1).First();

    /// <summary>The other sub-panels of a row's panel of which anything is needed: they give and take over width.</summary>
    private IEnumerable<int> Others(int row, long[] need) => family.Room == 0 ? [] : family.Siblings(row).Where(other => need[other] > 0);

    private int[] Serve(long net, int times, long[] need)
    {
        var served = new List<int>();
        for (var piece = 0; piece < times; piece++)
        {
            var row = Most(need, net);
            if (row < 0)
            {
                break;
            }

            need[row] -= net;
            Shift(row, need);
            served.Add(row);
        }

        return [.. served];
    }

    /// <summary>What a sub-panel has too much, or lacks too little of for one more strip, the others have less or more to do.</summary>
    private void Shift(int row, long[] need)
    {
        foreach (var other in need[row] < family.Narrowest ? Others(row, need).ToList() : [])
        {
            var moved = need[row] > 0 ? Math.Min(need[row], family.Room) : -Math.Min(Math.Min(-need[row], family.Room), need[other]);
            need[row] -= moved;
            need[other] += moved;
        }
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
