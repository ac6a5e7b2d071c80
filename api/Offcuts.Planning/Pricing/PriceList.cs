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
    private const double Trifle = 1024 / Grid;

    private PriceList(double[] piece, double[] perTick, long[] need, double worthWeight, bool countsAllLeftovers)
    {
        CountsAllLeftovers = countsAllLeftovers;
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

    /// <summary>
    /// Whether pricing counts every leftover that there can be, those at the ends of runs, beside trimmed blanks and beside strips too, and only patterns that
    /// make anything: for a bound on the worth. A search does without.
    /// </summary>
    public bool CountsAllLeftovers { get; }

    /// <summary>
    /// The same prices for a bound on the worth, which counts a minor unit of worth as one; all that is needed is worth at least a trifle, so that boards cut for nothing
    /// dearer are counted too.
    /// </summary>
    public PriceList WithAllLeftovers(IReadOnlyList<DemandRow> rows) => new(
        [.. Piece.Select((value, row) => rows[row] is PartRow && Need[row] > 0 ? Math.Max(value, Trifle) : value)],
        [.. PerTick.Select((value, row) => rows[row] is StripRow && Need[row] > 0 ? Math.Max(value, 1 / Grid) : value)], Need, 1, true);

    /// <summary>The same prices for what is still needed.</summary>
    public PriceList With(long[] need) => new(Piece, PerTick, need, WorthWeight, CountsAllLeftovers);

    /// <summary>A fraction of the prices, rounded down to the grid.</summary>
    public PriceList Times(double fraction) => new(
        [.. Piece.Select(value => OnGrid(value * fraction))], [.. PerTick.Select(value => OnGrid(value * fraction))], Need, WorthWeight, CountsAllLeftovers);

    /// <summary>The same prices, each less a discount on the grid.</summary>
    public PriceList Less(double[] discount) => new(
        [.. Piece.Select((value, row) => value > 0 ? value - discount[row] : 0)],
        [.. PerTick.Select((value, row) => value > 0 ? value - discount[row] : 0)], Need, WorthWeight, CountsAllLeftovers);

    /// <summary>
    /// The same prices with all sub-panels of a panel alike at their mean. Only such prices give a bound: a plan may share out a panel's width as it
    /// likes, so its demand is worth what the width is worth wherever it lies.
    /// </summary>
    public PriceList Even(PlanningModel model)
    {
        if (model.Splits.Count == 0)
        {
            return this;
        }

        var perTick = (double[])PerTick.Clone();
        foreach (var split in model.Splits)
        {
            var mean = OnGrid(split.Rows.Average(row => perTick[row.Index]));
            foreach (var row in split.Rows)
            {
                perTick[row.Index] = mean;
            }
        }

        return new PriceList(Piece, perTick, Need, WorthWeight, CountsAllLeftovers);
    }

    /// <summary>The next value on the grid below.</summary>
    public static double OnGrid(double value) => Math.Floor(value * Grid) / Grid;

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
                piece[row] = OnGrid(duals[row]);
            }
            else
            {
                perTick[row] = OnGrid(duals[row] / rows[row].Needed);
            }
        }

        return new PriceList(piece, perTick, need, worthWeight, false);
    }

    /// <summary>Sum over all rows of value times need: what the whole demand is worth at these prices.</summary>
    public double OfDemand() => OfDemand(Enumerable.Range(0, Need.Length));

    /// <summary>What the demand of some rows is worth at these prices.</summary>
    public double OfDemand(IEnumerable<int> rows) => rows.Where(row => Need[row] > 0).Sum(row => (Piece[row] + PerTick[row]) * Need[row]);
}
