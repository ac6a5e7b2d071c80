namespace Offcuts.Pictures.Drawing;

/// <summary>Keeps marks beside a board apart: each as near as can be to where it points.</summary>
internal static class Lane
{
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
            var next = from;
            foreach (var index in inRow)
            {
                places[index] = (Math.Max(next, wanted[index]), row);
                next = places[index].At + size;
            }

            next = to;
            foreach (var index in Enumerable.Reverse(inRow))
            {
                places[index].At = Math.Min(next, places[index].At);
                next = places[index].At - size;
            }
        }

        return places;
    }
}
