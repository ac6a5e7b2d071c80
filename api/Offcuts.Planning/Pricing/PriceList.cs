using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// What each thing is worth to the pattern that makes it: the duals of the master problem, on a grid of powers of two so that
/// sums of them are exact, and what leftovers and cuts count for.
/// </summary>
internal sealed class PriceList
{
    /// <summary>Values are multiples of 2^-30, so sums below 2^22 minor units are exact in a double.</summary>
    private const double Grid = 1L << 30;

    private PriceList(double[] piece, double[] perTick, long[] need, double worthWeight)
    {
        Piece = piece;
        PerTick = perTick;
        Need = need;
        WorthWeight = worthWeight;
    }

    /// <summary>Value of one piece, by row; 0 for strip rows.</summary>
    public double[] Piece { get; }

    /// <summary>Value of one tick of net strip width, by row; 0 for part rows.</summary>
    public double[] PerTick { get; }

    /// <summary>How much is still needed, by row.</summary>
    public long[] Need { get; }

    /// <summary>What a minor unit of worth counts against a minor unit of money.</summary>
    public double WorthWeight { get; }

    /// <summary>The same prices for what is still needed.</summary>
    public PriceList With(long[] need) => new(Piece, PerTick, need, WorthWeight);

    /// <summary>Prices from the duals of the rows (each for covering the whole row's unit), rounded down to the grid.</summary>
    public static PriceList FromDuals(IReadOnlyList<DemandRow> rows, double[] duals, long[] need, double worthWeight)
    {
        var piece = new double[rows.Count];
        var perTick = new double[rows.Count];
        for (var row = 0; row < rows.Count; row++)
        {
            if (need[row] <= 0 || duals[row] <= 0)
            {
                continue;
            }

            if (rows[row] is PartRow)
            {
                piece[row] = Math.Floor(duals[row] * Grid) / Grid;
            }
            else
            {
                perTick[row] = Math.Floor(duals[row] / rows[row].Needed * Grid) / Grid;
            }
        }

        return new PriceList(piece, perTick, need, worthWeight);
    }

    /// <summary>Sum over all rows of value times need: what the whole demand is worth at these prices.</summary>
    public double OfDemand()
    {
        var sum = 0.0;
        for (var row = 0; row < Need.Length; row++)
        {
            if (Need[row] > 0)
            {
                sum += (Piece[row] + PerTick[row]) * Need[row];
            }
        }

        return sum;
    }
}
