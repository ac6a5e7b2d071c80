using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Fitting;

/// <summary>
/// What boards and offers give to the rows of a design, by areas. Beside each piece lies a kerf, at the far edges of the board too if that is taken to reach
/// a kerf further, so that areas are counted with a kerf each way. A unit of row r takes at least the area a_rb of a board b. Each board on offer costs
/// p_b for an area A_b, so a unit that is bought costs at least m_r = min_b a_rb p_b / A_b; and what stock lacks in area must be bought.
/// With f_r the finished wood of a unit, no board gives more finished wood than A_b max_r f_r / a_rb.
/// </summary>
internal sealed class RowSources(List<DemandRow> rows, Shop shop, FinishedWood wood)
{
    /// <summary>Sums of so many products in floating point are right to far more than this part of them.</summary>
    private const double Margin = 1e-9;
    private readonly double kerf = shop.Kerf.Ticks;
    private readonly ClassOptions options = new(shop);
    private readonly Dictionary<BoardClass, RowCut[]> byClass = [];
    private readonly double[] leastArea = [.. rows.Select(_ => double.PositiveInfinity)];
    private readonly double[] leastMoney = [.. rows.Select(_ => double.PositiveInfinity)];
    private readonly double[] mostWeight = new double[rows.Count];
    private readonly double[] feet = Feet(rows, wood);
    private readonly List<(double Weight, double Feet)> stockFeet = [];
    private double stockArea;

    // What an outcome has of each board is rounded, perhaps up.
    private double rounding;

    /// <summary>Takes a board or a size of an offer into account; says whether anything can be cut from it.</summary>
    public bool Take(FitPiece piece)
    {
        if (!byClass.TryGetValue(piece.Class, out var cuts))
        {
            byClass.Add(piece.Class, cuts = Cuts(piece.Class));
        }

        var area = (piece.Usable.Length.Ticks + kerf) * (piece.Usable.Width.Ticks + kerf);
        var (fits, density) = (false, 0.0);
        foreach (var cut in cuts)
        {
            if (cut.Along > piece.Usable.Length.Ticks || cut.Across > piece.Usable.Width.Ticks)
            {
                continue;
            }

            fits = true;
            if (piece.Offer is { } offer)
            {
                leastMoney[cut.Row] = Math.Min(leastMoney[cut.Row], cut.LeastArea * StepPrices.LeastPrice(offer).MinorUnits / area);
            }
            else
            {
                leastArea[cut.Row] = Math.Min(leastArea[cut.Row], cut.LeastArea);
                mostWeight[cut.Row] = Math.Max(mostWeight[cut.Row], piece.Weight);
                density = Math.Max(density, feet[cut.Row] / cut.LeastArea);
            }
        }

        if (fits && piece.Board is not null)
        {
            rounding += piece.Weight * FitOutcome.Precision;
            stockArea += area * piece.Quantity;
            stockFeet.Add((piece.Weight, area * piece.Quantity * density));
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
    public double MostEaten()
    {
        var served = rows.Where(row => double.IsFinite(leastArea[row.Index])).ToList();
        var (eaten, left) = (0.0, served.Sum(row => feet[row.Index] * row.Needed));

        // Again a fractional knapsack: first from the boards whose wood counts most.
        foreach (var (weight, most) in stockFeet.OrderByDescending(board => board.Weight))
        {
            eaten += weight * Math.Min(most, left);
            left = Math.Max(0, left - most);
        }

        return (Math.Min(eaten, served.Sum(row => mostWeight[row.Index] * feet[row.Index] * row.Needed)) * (1 + Margin)) + rounding;
    }

    // A panel's strips may reach further than they need, but share out its wood among them.
    private static double[] Feet(List<DemandRow> rows, FinishedWood wood)
    {
        var widths = rows.OfType<StripRow>().GroupBy(row => (row.Name, row.Copy)).ToDictionary(panel => panel.Key, panel => panel.Sum(row => row.Needed));
        return [.. rows.Select(row => (double)wood.Each(row.Name) / (row is StripRow strip ? widths[(strip.Name, strip.Copy)] : ((PartRow)row).Units))];
    }

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
            .. blanks.Select(blank => new RowCut(blank.Row, blank.Along, blank.Across, (blank.Along + kerf) * (blank.Across + kerf) / blank.Yield)),
            .. families.SelectMany(family => family.Rows.Select(row => new RowCut(
                row, family.Along, family.Narrowest + family.Edge, (family.Along + kerf) * (1 + ((family.Edge + kerf) / family.Widest))))),
        ];
    }
}

/// <summary>What a unit of a row (a piece, or a tick of width) takes of a board's area.</summary>
/// <param name="Row">The row.</param>
/// <param name="Along">Least extent along the board of what is cut for it.</param>
/// <param name="Across">Least extent across it.</param>
/// <param name="LeastArea">Least area of a unit.</param>
internal readonly record struct RowCut(int Row, long Along, long Across, double LeastArea);
