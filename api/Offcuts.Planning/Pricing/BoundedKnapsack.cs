namespace Offcuts.Planning.Pricing;

/// <summary>An item of a bounded knapsack: size in cells, value of one, how many there are.</summary>
internal readonly record struct KnapsackItem(int Size, double Value, int Copies, int Tag);

/// <summary>
/// The bounded knapsack by dynamic programming: best[r] = max sum of value n over items with sum of size n at most r and
/// 0 &lt;= n &lt;= copies. Copies are split into bundles of 1, 2, 4, ... (the usual binary splitting), so that k copies cost
/// log k passes.
/// </summary>
internal sealed class BoundedKnapsack
{
    private readonly List<(int Size, double Value, int Tag, int Count)> bundles = [];
    private bool[] taken = [];
    private int width;

    /// <summary>Best values for capacities 0 to the capacity asked for.</summary>
    public double[] Best { get; private set; } = [];

    /// <summary>Solves for all capacities up to <paramref name="capacity"/>; with <paramref name="trace"/> the choice can be read back.</summary>
    public void Solve(IEnumerable<KnapsackItem> items, int capacity, bool trace)
    {
        Split(items, capacity);
        width = capacity + 1;
        if (Best.Length < width)
        {
            Best = new double[width];
        }

        Array.Clear(Best, 0, width);
        if (trace)
        {
            var cells = bundles.Count * width;
            if (taken.Length < cells)
            {
                taken = new bool[cells];
            }
            else
            {
                Array.Clear(taken, 0, cells);
            }
        }

        unchecked
        {
            for (var b = 0; b < bundles.Count; b++)
            {
                Pass(b, capacity, trace);
            }
        }
    }

    /// <summary>How many of each item (by tag) make up the best value at a capacity.</summary>
    public IEnumerable<(int Tag, int Count)> Trace(int capacity)
    {
        var left = capacity;
        for (var b = bundles.Count - 1; b >= 0; b--)
        {
            if (taken[(b * width) + left])
            {
                yield return (bundles[b].Tag, bundles[b].Count);
                left -= bundles[b].Size;
            }
        }
    }

    private void Pass(int b, int capacity, bool trace)
    {
        var (size, value, _, _) = bundles[b];
        var best = Best;
        var row = b * width;
        for (var r = capacity; r >= size; r--)
        {
            var with = best[r - size] + value;
            if (with > best[r])
            {
                best[r] = with;
                if (trace)
                {
                    taken[row + r] = true;
                }
            }
        }
    }

    private void Split(IEnumerable<KnapsackItem> items, int capacity)
    {
        bundles.Clear();
        foreach (var item in items)
        {
            if (item.Value <= 0 || item.Size > capacity)
            {
                continue;
            }

            var left = item.Size == 0 ? item.Copies : Math.Min(item.Copies, capacity / item.Size);
            for (var bundle = 1; left > 0; bundle *= 2)
            {
                var count = Math.Min(bundle, left);
                bundles.Add((item.Size * count, item.Value * count, item.Tag, count));
                left -= count;
            }
        }
    }
}
