namespace Offcuts.Pictures.Drawing;

/// <summary>Keeps marks beside a board apart: each as near as can be to where it points.</summary>
internal static class Lane
{
    private const int Digits = 6;

    /// <summary>How many marks of one size find room in one row.</summary>
    public static int PerRow(decimal size, decimal from, decimal to) => (int)Math.Floor((to - from) / size) + 1;

    /// <summary>Places for marks of one size between two ends, in as many rows as that takes.</summary>
    /// <param name="wanted">Where the marks would like to be, in any order.</param>
    /// <param name="size">Room for one mark.</param>
    /// <param name="from">The lane's beginning, for a mark's centre.</param>
    /// <param name="to">The lane's end, for a mark's centre; at least the beginning.</param>
    /// <returns>For every mark in the order given, where its centre goes and in which row from 0.</returns>
    public static IReadOnlyList<(decimal At, int Row)> Spread(IReadOnlyList<decimal> wanted, decimal size, decimal from, decimal to)
    {
        var places = new (decimal At, int Row)[wanted.Count];
        var perRow = PerRow(size, from, to);
        var rows = (wanted.Count + perRow - 1) / perRow;
        var order = Enumerable.Range(0, wanted.Count).OrderBy(index => wanted[index]).ToList();
        for (var row = 0; row < rows; row++)
        {
            var inRow = order.Where((_, place) => place % rows == row).ToList();
            var shifts = Rising([.. inRow.Select((index, place) => wanted[index] - (place * size))]);
            foreach (var ((index, shift), place) in inRow.Zip(shifts).Select((pair, place) => (pair, place)))
            {
                // Rounded, so that sums are exact: a mean of many digits would put two marks a hair too near.
                places[index] = (Math.Clamp(Math.Round(shift, Digits), from, to - ((inRow.Count - 1) * size)) + (place * size), row);
            }
        }

        return places;
    }

    // The nearest sequence, by squares, that never falls: neighbours that would are pooled to their mean.
    private static IEnumerable<decimal> Rising(IReadOnlyList<decimal> values)
    {
        var pools = new Stack<(decimal Sum, int Count)>();
        foreach (var value in values)
        {
            var pool = (Sum: value, Count: 1);
            while (pools.TryPeek(out var before) && before.Sum / before.Count > pool.Sum / pool.Count)
            {
                pools.Pop();
                pool = (before.Sum + pool.Sum, before.Count + pool.Count);
            }

            pools.Push(pool);
        }

        return pools.Reverse().SelectMany(pool => Enumerable.Repeat(pool.Sum / pool.Count, pool.Count));
    }
}
