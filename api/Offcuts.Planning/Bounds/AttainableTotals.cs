namespace Offcuts.Planning.Bounds;

/// <summary>The sums of money that whole purchases can add up to.</summary>
internal static class AttainableTotals
{
    private const long MostCells = 4_000_000;

    /// <summary>
    /// The smallest total of whole pieces at the given prices (each as often as wanted) that is at least <paramref name="bound"/>,
    /// but no more than <paramref name="known"/>, the cost of a plan at hand. With too many totals to list, the next multiple of
    /// the prices' greatest common divisor.
    /// </summary>
    public static long RoundUp(double bound, long known, IEnumerable<long> prices)
    {
        if (bound <= 0)
        {
            return 0;
        }

        var distinct = prices.Where(price => price > 0).Distinct().Order().ToList();
        var divisor = distinct.Aggregate(0L, Gcd);
        if (divisor == 0 || bound >= known)
        {
            return known;
        }

        var least = (long)Math.Ceiling(bound / divisor);
        var cells = known / divisor;
        if (cells > MostCells)
        {
            return Math.Min(known, least * divisor);
        }

        var reachable = new bool[cells + 1];
        reachable[0] = true;
        foreach (var step in distinct.Select(price => price / divisor))
        {
            for (var at = step; at <= cells; at++)
            {
                reachable[at] |= reachable[at - step];
            }
        }

        while (least < cells && !reachable[least])
        {
            least++;
        }

        return Math.Min(known, least * divisor);
    }

    private static long Gcd(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }
}
