namespace Offcuts.Domain;

/// <summary>What a build is ranked by; of one that is not planned yet, the best that it can come to.</summary>
/// <param name="Missing">Pieces that can be had neither from stock nor from an offer.</param>
/// <param name="Cost">Money still to spend, ready-made items and what further stops count included.</param>
/// <param name="ShareFromStock">The share of its finished wood that comes from stock, 0 to 1.</param>
/// <param name="BoardFeetFromStock">The same in board feet.</param>
/// <param name="Eaten">What its parts take of the pile, in minor units weighted by <see cref="PileWeight"/>.</param>
public readonly record struct FitFigures(int Missing, Money Cost, decimal ShareFromStock, decimal BoardFeetFromStock, decimal Eaten);

/// <summary>
/// The order of builds. Where nothing tells two apart, their references do, so that it is the same on every run.
/// </summary>
/// <param name="order">Which build comes first.</param>
public sealed class FitOrdering(FitOrder order) : IComparer<(FitFigures Figures, string Reference)>
{
    /// <inheritdoc/>
    public int Compare((FitFigures Figures, string Reference) x, (FitFigures Figures, string Reference) y)
    {
        var (one, other) = (x.Figures, y.Figures);
        // What cannot be finished comes last; the less it lacks the better where money is what counts.
        var least = order == FitOrder.Cheapest
            ? First(one.Missing.CompareTo(other.Missing), one.Cost.CompareTo(other.Cost))
            : First((one.Missing > 0).CompareTo(other.Missing > 0), other.Eaten.CompareTo(one.Eaten), one.Cost.CompareTo(other.Cost));
        return First(
            least, other.ShareFromStock.CompareTo(one.ShareFromStock), other.BoardFeetFromStock.CompareTo(one.BoardFeetFromStock),
            string.CompareOrdinal(x.Reference, y.Reference));
    }

    private static int First(params ReadOnlySpan<int> comparisons)
    {
        foreach (var comparison in comparisons)
        {
            if (comparison != 0)
            {
                return comparison;
            }
        }

        return 0;
    }
}
