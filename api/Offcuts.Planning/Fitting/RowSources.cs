using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Fitting;

/// <summary>
/// What boards and offers give to the rows of a design, by areas. A unit of row r takes at least the area a_rb of a board b. Each board on offer costs
/// p_b for an area A_b, so a unit that is bought costs at least m_r = min_b a_rb p_b / A_b; and what stock lacks in area must be bought.
/// </summary>
internal sealed class RowSources(List<DemandRow> rows, Shop shop)
{
    /// <summary>Sums of so many products in floating point are right to far more than this part of them.</summary>
    private const double Margin = 1e-9;
    private const double CubicTicksPerBoardFoot = 144.0 * Length.TicksPerInch * Length.TicksPerInch * Length.TicksPerInch;
    private readonly ClassOptions options = new(shop);
    private readonly Dictionary<BoardClass, RowCut[]> byClass = [];
    private readonly double[] leastArea = [.. rows.Select(_ => double.PositiveInfinity)];
    private readonly double[] leastMoney = [.. rows.Select(_ => double.PositiveInfinity)];
    private readonly double[] mostEaten = new double[rows.Count];
    private double stockArea;
    private double stockEaten;

    // What an outcome has of each board is rounded, perhaps up.
    private double rounding;

    /// <summary>Takes a board or a size of an offer into account; says whether anything can be cut from it.</summary>
    public bool Take(FitPiece piece)
    {
        if (!byClass.TryGetValue(piece.Class, out var cuts))
        {
            byClass.Add(piece.Class, cuts = Cuts(piece.Class));
        }

        var fits = false;
        foreach (var cut in cuts)
        {
            if (cut.Along > piece.Usable.Length.Ticks || cut.Across > piece.Usable.Width.Ticks)
            {
                continue;
            }

            fits = true;
            if (piece.Offer is { } offer)
            {
                leastMoney[cut.Row] = Math.Min(leastMoney[cut.Row], cut.LeastArea * StepPrices.LeastPrice(offer).MinorUnits / piece.Area);
            }
            else
            {
                leastArea[cut.Row] = Math.Min(leastArea[cut.Row], cut.LeastArea);
                mostEaten[cut.Row] = Math.Max(mostEaten[cut.Row], cut.MostArea * piece.Class.Thickness.Ticks * piece.Weight / CubicTicksPerBoardFoot);
            }
        }

        if (fits && piece.Board is not null)
        {
            rounding += piece.Weight * FitOutcome.Precision;
            stockArea += piece.Area * piece.Quantity;
            stockEaten += piece.Area * piece.Class.Thickness.Ticks * piece.Weight / CubicTicksPerBoardFoot * piece.Quantity;
        }

        return fits;
    }

    /// <summary>The least area that a unit of a row takes of a board; null if it does not fit on it.</summary>
    public double? LeastArea(int row, FitPiece piece)
    {
        double? least = null;
        foreach (var cut in byClass[piece.Class])
        {
            if (cut.Row == row && cut.Along <= piece.Usable.Length.Ticks && cut.Across <= piece.Usable.Width.Ticks && !(least <= cut.LeastArea))
            {
                least = cut.LeastArea;
            }
        }

        return least;
    }

    /// <summary>Whether a part or panel can be had; false as well for a panel that the machines cannot take.</summary>
    public bool IsServed(string name) => Has(name, row => double.IsFinite(leastArea[row]) || double.IsFinite(leastMoney[row]));

    /// <summary>Whether a part or panel can be had from stock.</summary>
    public bool IsServedByStock(string name) => Has(name, row => double.IsFinite(leastArea[row]));

    /// <summary>Minor units below which no plan that makes all that can be had comes.</summary>
    public long LeastMoney()
    {
        var (money, lacking) = (0.0, -stockArea);
        var relief = new List<(double Rate, double Area)>();
        foreach (var row in rows)
        {
            if (double.IsFinite(leastArea[row.Index]))
            {
                lacking += leastArea[row.Index] * row.Needed;
                relief.Add((leastMoney[row.Index] / leastArea[row.Index], leastArea[row.Index] * row.Needed));
            }
            else if (double.IsFinite(leastMoney[row.Index]))
            {
                money += leastMoney[row.Index] * row.Needed;
            }
        }

        // A fractional knapsack: of what stock lacks, first what is bought for least money an area.
        foreach (var (rate, area) in relief.Where(each => double.IsFinite(each.Rate)).OrderBy(each => each.Rate))
        {
            if (lacking <= 0)
            {
                break;
            }

            money += rate * Math.Min(area, lacking);
            lacking -= area;
        }

        return (long)Math.Ceiling(Math.Max(0, (money * (1 - Margin)) - Margin));
    }

    /// <summary>What no plan's parts exceed in what they take of the pile, in weighted minor units.</summary>
    public double MostEaten() => (Math.Min(stockEaten, rows.Sum(row => mostEaten[row.Index] * row.Needed)) * (1 + Margin)) + rounding;

    private bool Has(string name, Func<int, bool> served)
    {
        var own = rows.Where(row => row.Name == name).ToList();
        return own.Count > 0 && own.TrueForAll(row => served(row.Index));
    }

    private RowCut[] Cuts(BoardClass cls)
    {
        var (blanks, families) = options.Of(rows, cls);
        return
        [
            .. blanks.Select(blank => new RowCut(
                blank.Row, blank.Along, blank.Across, (double)blank.Along * blank.Across / blank.Yield,
                // It may give fewer pieces than it holds, and grow into waste.
                ((double)blank.Along + blank.MoreAlong) * (blank.Across + blank.MoreAcross) / blank.Units)),
            .. families.SelectMany(family => family.Rows.Select(row => new RowCut(
                row, family.Along, family.Narrowest + family.Edge,
                family.Along * (1 + ((double)family.Edge / family.Widest)),
                // All strips together may be wider than they need, by less than a strip.
                family.Along * (1 + ((double)family.Edge / family.Narrowest)) * (1 + ((double)family.Widest / rows[row].Needed))))),
        ];
    }
}

/// <summary>What a unit of a row (a piece, or a tick of width) takes of a board's area.</summary>
/// <param name="Row">The row.</param>
/// <param name="Along">Least extent along the board of what is cut for it.</param>
/// <param name="Across">Least extent across it.</param>
/// <param name="LeastArea">Least area of a unit.</param>
/// <param name="MostArea">Largest area of a unit.</param>
internal readonly record struct RowCut(int Row, long Along, long Across, double LeastArea, double MostArea);
