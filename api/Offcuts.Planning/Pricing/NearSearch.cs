namespace Offcuts.Planning.Pricing;

/// <summary>
/// Finds all choices of items that fit a room and are worth at least so much, in depth-first order: each item in turn as often as wanted. What the
/// items from one on can add at most to what is chosen is known from a knapsack of just those, so that hardly a step leads nowhere.
/// </summary>
internal sealed class NearSearch
{
    /// <summary>With more cells than this in all, only the knapsacks of some of the items are kept.</summary>
    private const long MostCells = 4_000_000;

    private readonly Entry[] entries;
    private readonly PriceList prices;
    private readonly double least;
    private readonly int room;
    private readonly int mostChoices;
    private readonly ListingEffort effort;

    // most[i][x]: the most that the items from i times the stride on are worth on a room of x.
    private readonly double[][] most;
    private readonly int stride;
    private readonly Dictionary<string, NearChoice> found = new(StringComparer.Ordinal);
    private readonly List<NearItem> taken = [];
    private NearChoice start = null!;
    private int[] counts = [];

    /// <param name="items">The items and what each is worth.</param>
    /// <param name="prices">What everything is worth, and how much of it is needed.</param>
    /// <param name="room">The room in cells.</param>
    /// <param name="least">Least worth of a choice.</param>
    /// <param name="mostChoices">With more choices than this it is given up.</param>
    /// <param name="effort">How much work it may be.</param>
    public NearSearch(IEnumerable<(NearItem Item, double Value)> items, PriceList prices, int room, double least, int mostChoices, ListingEffort effort)
    {
        entries = [.. items.OrderByDescending(each => each.Item.Size).Select(each => new Entry(each.Item, each.Value, Rows(each.Item)))];
        (this.prices, this.room, this.least, this.mostChoices, this.effort) = (prices, room, least, mostChoices, effort);
        stride = (int)(1 + (entries.Length * (long)room / MostCells));
        most = new double[(entries.Length / stride) + 1][];
        var knapsack = new BoundedKnapsack();
        knapsack.Clear(room, trace: false);
        for (var at = entries.Length; at >= 0 && effort.SpendInTime(1 + (room / 16)); at--)
        {
            if (at < entries.Length)
            {
                knapsack.Add(new KnapsackItem(entries[at].Item.Size, entries[at].Value, Times(entries[at]), at));
            }

            if (at % stride == 0)
            {
                most[at / stride] = knapsack.Best.ToArray();
            }
        }
    }

    /// <summary>The choices that go on from one; not all of them where the effort is spent.</summary>
    public IEnumerable<NearChoice> From(NearChoice first)
    {
        (start, counts) = (first, (int[])first.Made.Counts.Clone());
        if (!effort.IsSpent)
        {
            Extend(first.Value, first.Used, 0);
        }

        return found.Values;
    }

    private static (int Row, int Count)[] Rows(NearItem item) =>
        [.. item.Made.Counts.Select((count, row) => (row, count)).Where(each => each.count > 0)];

    private double Most(int from, int left) => most[from / stride][left];

    /// <summary>How often an item at most adds something.</summary>
    private int Times(Entry entry) =>
        (int)Math.Min(10_000, entry.Rows.Max(each => (prices.Need[each.Row] + each.Count - 1) / each.Count));

    /// <summary>Finds all choices that take more of the items from one on; a choice that can take more makes less than those.</summary>
    private void Extend(double value, int used, int from)
    {
        var extended = false;
        for (var at = from; at < entries.Length && !effort.IsSpent && value + Most(at, room - used) >= least; at++)
        {
            ref readonly var entry = ref entries[at];
            var left = room - used - entry.Item.Size;
            if (left < 0 || value + entry.Value + Most(at, left) < least || !effort.Spend(1))
            {
                continue;
            }

            var added = Add(entry.Rows);
            if (added > 0 && value + added + Most(at, left) >= least)
            {
                extended = true;
                taken.Add(entry.Item);
                Extend(value + added, used + entry.Item.Size, at);
                taken.RemoveAt(taken.Count - 1);
            }

            TakeBack(entry.Rows);
        }

        if (!extended && value >= least && effort.SpendInTime(found.Count > mostChoices ? long.MaxValue / 2 : 1 + counts.Length))
        {
            Record(used);
        }
    }

    // Counts may go beyond the need on the way, so that they can be taken back; what is beyond counts for nothing.
    private double Add((int Row, int Count)[] rows)
    {
        var value = 0.0;
        foreach (var (row, count) in rows)
        {
            value += prices.Piece[row] * Math.Clamp(prices.Need[row] - counts[row], 0, count);
            counts[row] += count;
        }

        return value;
    }

    private void TakeBack((int Row, int Count)[] rows)
    {
        foreach (var (row, count) in rows)
        {
            counts[row] -= count;
        }
    }

    private void Record(int used)
    {
        var made = new Made([.. counts.Select((count, row) => (int)Math.Min(Math.Max(0, prices.Need[row]), count))]);
        if (found.TryGetValue(made.Key, out var other) && other.Used <= used)
        {
            return;
        }

        var choice = start;
        foreach (var item in taken)
        {
            choice = new NearChoice(choice.Made, choice.Value, choice.Used + item.Size, item, choice);
        }

        var value = made.Counts.Select((count, row) => prices.Piece[row] * count).Sum();
        found[made.Key] = choice with { Made = made, Value = value };
    }

    /// <param name="Item">The item.</param>
    /// <param name="Value">What it is worth by itself.</param>
    /// <param name="Rows">What it makes.</param>
    private readonly record struct Entry(NearItem Item, double Value, (int Row, int Count)[] Rows);
}
