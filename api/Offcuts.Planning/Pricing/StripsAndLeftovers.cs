using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// An upper bound on what strips of some panels and the leftovers beside and behind them are worth together on a free extent. With the dearest price p of a row of each
/// family, N all that is needed of it, widths that add up to T in n strips or rips of which each holds m strips in a row, and r_m the most that what is left behind m strips
/// can be worth for a tick of their width:
/// <code>
/// value &lt;= min over 0 &lt;= q &lt;= 1 of { sum (1 - q) p N + max over n, T of max over families, m (q p m + r_m) T + worth(what is left beside them) }
/// </code>
/// because p min(x, N) &lt;= (1 - q) p N + q p x. All strips are taken to be as narrow, as wide and as little sawn as those of any of the families may be.
/// For one n the second part is linear in T but for the leftover's worth, which is convex between the widths at which it begins
/// to be kept or is as wide as counts: its greatest value lies at one of these widths or at an end.
/// </summary>
/// <param name="panels">The families of which anything is needed, with the most strips of them in a row.</param>
/// <param name="profile">What leftovers are worth.</param>
/// <param name="kerf">The kerf in ticks.</param>
/// <param name="prices">The prices.</param>
internal sealed class StripsAndLeftovers(IReadOnlyList<(StripFamily Family, int Times)> panels, Profile profile, long kerf, PriceList prices)
{
    private static readonly double[] Shares = [0, 0.25, 0.5, 0.75, 1];
    private readonly double[] price = [.. panels.Select(panel => PriceOf(panel.Family, prices))];
    private readonly double whole = panels.Sum(panel => PriceOf(panel.Family, prices) * panel.Family.Rows.Sum(row => (double)Math.Max(0, prices.Need[row])));
    private readonly long narrowest = panels.Select(panel => Math.Max(1, panel.Family.Narrowest)).DefaultIfEmpty(1).Min();
    private readonly long widest = panels.Select(panel => panel.Family.Widest).DefaultIfEmpty(0).Max();
    private readonly long edge = panels.Select(panel => panel.Family.Edge).DefaultIfEmpty(0).Min();
    private readonly long[] marks = [.. profile.Kept.Across.Append(SearchWorth.FullWidth).Distinct()];
    private readonly Dictionary<long, double[][]> behind = [];

    /// <summary>The bound; less than nothing where no strip fits.</summary>
    /// <param name="free">The free extent with one kerf, across the board, in ticks.</param>
    /// <param name="along">How long what the strips are cut from is.</param>
    public double Value(long free, long along)
    {
        var best = double.NegativeInfinity;
        var ends = Behind(along);
        for (var count = 1L; panels.Count > 0; count++)
        {
            var least = count == 1 ? narrowest : Math.Max(count * narrowest, (count - 1) * widest);
            var most = Math.Min(free - (count * (edge + kerf)), count * widest);
            if (most < least)
            {
                return best;
            }

            var room = free - kerf - (count * (edge + kerf));
            best = Math.Max(best, Shares.Min(OfShare));

            double OfShare(double share)
            {
                var slope = ends.Select((end, panel) => end.Select((worth, at) => (share * price[panel] * (at + 1)) + worth).Max()).Max();
                var greatest = Math.Max(At(least), At(most));
                foreach (var mark in marks)
                {
                    greatest = room - mark > least && room - mark < most ? Math.Max(greatest, At(room - mark)) : greatest;
                }

                return ((1 - share) * whole) + greatest;

                double At(long width) => (slope * width) + (room > width ? prices.WorthWeight * profile.WorthOf(along, room - width) : 0);
            }
        }

        return best;
    }

    private static double PriceOf(StripFamily family, PriceList prices) =>
        family.Rows.Where(row => prices.Need[row] > 0).Select(row => prices.PerTick[row]).DefaultIfEmpty(0).Max();

    /// <summary>What can be worth most behind so many strips of each panel in a row, for a tick of their net width.</summary>
    private double[][] Behind(long along)
    {
        if (!behind.TryGetValue(along, out var worth))
        {
            worth = [.. panels.Select(panel => OfPanel(panel.Family, panel.Times))];
            behind.Add(along, worth);
        }

        return worth;

        double[] OfPanel(StripFamily family, int times)
        {
            var sawn = family.Widest + family.Edge;
            return [.. Enumerable.Range(1, times).Select(count => along - (count * (family.Along + kerf)) is > 0 and var left
                ? prices.WorthWeight * profile.WorthOf(left, sawn) / sawn * (1 + (family.Edge / (double)Math.Max(1, family.Narrowest)))
                : 0)];
        }
    }
}
