using System.Runtime.Intrinsics;

namespace Offcuts.Planning.Pricing;

/// <summary>An item of a bounded knapsack: size in cells, value of one, how many there are.</summary>
internal readonly record struct KnapsackItem(int Size, double Value, int Copies, int Tag);

/// <summary>
/// The bounded knapsack by dynamic programming: best[r] = max sum of value n over items with sum of size n at most r and
/// 0 &lt;= n &lt;= copies. Copies are split into bundles of 1, 2, 4, ... (the usual binary splitting), so that k copies cost
/// log k passes. Items may be added after others were solved for.
/// </summary>
internal sealed class BoundedKnapsack
{
    private const int Lanes = 8;
    private readonly List<Bundle> bundles = [];

    // One bit for each cell of a block of lanes, bundle after bundle: whether the bundle is part of the best choice there.
    private byte[] taken = [];
    private double[] best = [];
    private int capacity;
    private int blocks;
    private bool isTraced;

    private readonly record struct Bundle(int Size, double Value, int Tag, int Count);

    /// <summary>Best values for capacities 0 to the capacity asked for.</summary>
    public ReadOnlySpan<double> Best => best.AsSpan(0, capacity + 1);

    /// <summary>Solves for all capacities up to <paramref name="most"/>; with <paramref name="trace"/> the choice can be read back.</summary>
    public void Solve(IEnumerable<KnapsackItem> items, int most, bool trace)
    {
        Clear(most, trace);
        foreach (var item in items)
        {
            Add(item);
        }
    }

    /// <summary>Lets go of its memory, and of what was solved for.</summary>
    public void Forget()
    {
        (best, taken, capacity) = ([], [], -1);
        bundles.Clear();
        bundles.TrimExcess();
    }

    /// <summary>Starts without items.</summary>
    public void Clear(int most, bool trace)
    {
        bundles.Clear();
        capacity = most;
        blocks = (most / Lanes) + 1;
        isTraced = trace;
        if (best.Length < blocks * Lanes)
        {
            best = new double[blocks * Lanes];
        }

        Array.Clear(best, 0, blocks * Lanes);
    }

    /// <summary>Adds an item to those solved for.</summary>
    public void Add(KnapsackItem item)
    {
        if (item.Value <= 0 || item.Size > capacity)
        {
            return;
        }

        var left = item.Size == 0 ? item.Copies : Math.Min(item.Copies, capacity / item.Size);
        for (var bundle = 1; left > 0; bundle *= 2)
        {
            var count = Math.Min(bundle, left);
            bundles.Add(new Bundle(item.Size * count, item.Value * count, item.Tag, count));
            left -= count;
            Pass(bundles.Count - 1);
        }
    }

    /// <summary>How many of each item (by tag) make up the best value at a capacity.</summary>
    public IEnumerable<(int Tag, int Count)> Trace(int at)
    {
        var left = at;
        for (var b = bundles.Count - 1; b >= 0; b--)
        {
            if ((taken[(b * blocks) + (left / Lanes)] >> (left % Lanes) & 1) != 0)
            {
                yield return (bundles[b].Tag, bundles[b].Count);
                left -= bundles[b].Size;
            }
        }
    }

    /// <summary>From the top down, because a bundle is there once: what a cell reads must not have it yet.</summary>
    private void Pass(int b)
    {
        var (size, value, _, _) = bundles[b];
        var cells = best.AsSpan(0, blocks * Lanes);
        var marks = isTraced ? Marks(b) : [];
        var added = Vector512.Create(value);
        var block = blocks - 1;
        for (; block * Lanes >= size; block--)
        {
            var without = Vector512.Create<double>(cells.Slice(block * Lanes, Lanes));
            var with = Vector512.Create<double>(cells.Slice((block * Lanes) - size, Lanes)) + added;
            Vector512.Max(without, with).CopyTo(cells[(block * Lanes)..]);
            if (isTraced)
            {
                marks[block] = (byte)Vector512.GreaterThan(with, without).ExtractMostSignificantBits();
            }
        }

        for (var r = (block * Lanes) + Lanes - 1; r >= size; r--)
        {
            var with = cells[r - size] + value;
            if (with > cells[r])
            {
                cells[r] = with;
                if (isTraced)
                {
                    marks[block] |= (byte)(1 << (r % Lanes));
                }
            }
        }
    }

    private Span<byte> Marks(int b)
    {
        if (taken.Length < (b + 1) * blocks)
        {
            Array.Resize(ref taken, Math.Max(2 * taken.Length, (b + 1) * blocks));
        }

        var marks = taken.AsSpan(b * blocks, blocks);
        marks.Clear();
        return marks;
    }
}
