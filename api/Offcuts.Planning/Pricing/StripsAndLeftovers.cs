using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// An upper bound on what strips of one family and the leftovers beside and behind them are worth together on a free extent. With the dearest price p of a
/// row, N all that is needed, widths that add up to T in n strips or rips of which each holds m strips in a row, and r_m the most that what is left behind m strips
/// can be worth for a tick of their width:
/// <code>
/// value &lt;= min over 0 &lt;= l &lt;= p of { (p - l) N + max over n, T, m of (l m + r_m) T + worth(what is left beside them) }
/// </code>
/// because p min(x, N) &lt;= (p - l) N + l x. For one n the second part is linear in T but for the leftover's worth, which is convex between the widths at which it begins
/// to be kept or is as wide as counts: its greatest value lies at one of these widths or at an end.
/// </summary>
/// <param name="family">The strips.</param>
/// <param name="profile">What leftovers are worth.</param>
/// <param name="kerf">The kerf in ticks.</param>
/// <param name="prices">The prices.</param>
internal sealed class StripsAndLeftovers(StripFamily family, Profile profile, long kerf, PriceList prices)
{
    private static readonly double[] Shares = [0, 0.25, 0.5, 0.75, 1];
    private readonly double price = family.Rows.Where(row => prices.Need[row] > 0).Select(row => prices.PerTick[row]).DefaultIfEmpty(0).Max();
    private readonly double need = family.Rows.Sum(row => (double)Math.Max(0, prices.Need[row]));
    private readonly long[] marks = [.. profile.Kept.Across.Append(SearchWorth.FullWidth).Distinct()];
    private readonly Dictionary<long, double[]> behind = [];

    /// <summary>The bound; less than nothing where no strip fits.</summary>
    /// <param name="free">The free extent with one kerf, across the board, in ticks.</param>
    /// <param name="along">How long what the strips are cut from is.</param>
    /// <param name="times">The most strips in a row.</param>
    public double Value(long free, long along, int times)
    {
        var best = double.NegativeInfinity;
        var (narrowest, ends) = (Math.Max(1, family.Narrowest), Behind(along, times));
        for (var count = 1L; ; count++)
        {
            var least = count == 1 ? narrowest : (count - 1) * family.Widest;
            var most = Math.Min(free - (count * (family.Edge + kerf)), count * family.Widest);
            if (most < least)
            {
                return best;
            }

            var room = free - kerf - (count * (family.Edge + kerf));
            best = Math.Max(best, Shares.Min(share => OfShare(share * price)));

            double OfShare(double part)
            {
                var slope = ends.Select((end, at) => (part * (at + 1)) + end).Max();
                var most1 = Math.Max(At(least), At(most));
                foreach (var mark in marks)
                {
                    most1 = room - mark > least && room - mark < most ? Math.Max(most1, At(room - mark)) : most1;
                }

                return ((price - part) * need) + most1;

                double At(long width) => (slope * width) + (room > width ? prices.WorthWeight * profile.WorthOf(along, room - width) : 0);
            }
        }
    }

    /// <summary>What can be worth most behind so many strips in a row, for a tick of their net width.</summary>
    private double[] Behind(long along, int times)
    {
        if (!behind.TryGetValue(along, out var worth))
        {
            var sawn = family.Widest + family.Edge;
            worth = [.. Enumerable.Range(1, times).Select(count => along - (count * (family.Along + kerf)) is > 0 and var left
                ? prices.WorthWeight * profile.WorthOf(left, sawn) / sawn * (1 + (family.Edge / (double)Math.Max(1, family.Narrowest)))
                : 0)];
            behind.Add(along, worth);
        }

        return worth;
    }
}
