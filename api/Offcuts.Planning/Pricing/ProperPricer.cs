using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// Good proper patterns of one board where the nested knapsacks count more of a part than is needed. What is made too often gets
/// cheaper by l and pays for its need instead, a Lagrangian relaxation of the needs within one board:
/// <code>
/// best proper value &lt;= max { sum (v_r - l_r) a_r : patterns a as the knapsacks count } + sum l_r need_r   for all l >= 0
/// </code>
/// l is moved along the subgradient a - need, by the step of Polyak (1969); the best proper pattern met on the way counts.
/// </summary>
internal sealed class ProperPricer(PlanningModel model, OrientedProfile view)
{
    /// <summary>After so many steps that did not lower the bound they get half as long (Held, Wolfe and Crowder 1974).</summary>
    private const int IdleSteps = 3;

    private readonly ProfilePricer inner = new(model, view);

    /// <summary>The best proper pattern met; null if none is worth anything.</summary>
    /// <param name="board">The board.</param>
    /// <param name="prices">What everything is worth.</param>
    /// <param name="enough">A value that a pattern must exceed to be of use.</param>
    /// <param name="steps">The most steps.</param>
    /// <param name="recombine">Whether to look in the end for the best choice among all sections met.</param>
    public Pattern? Of(BoardType board, PriceList prices, double enough, int steps, bool recombine)
    {
        var (bound, best, pattern) = (double.PositiveInfinity, 0.0, (Pattern?)null);
        var discount = new double[prices.Need.Length];
        var sections = new Dictionary<string, Section>(StringComparer.Ordinal);
        for (var step = 0; step < steps; step++)
        {
            inner.Prepare(prices.Less(discount), view.SecondOf(board));
            inner.Open(view.SecondOf(board), view.FirstOf(board));
            bound = Math.Min(bound, inner.BestValue(board) + Refund(discount, prices));
            Meet(inner.Sections(view.FirstOf(board), proper: true));
            foreach (var section in recombine ? inner.BestSections() : [])
            {
                sections.TryAdd(Key(section), section);
            }

            if (bound <= enough || bound <= best + 1e-9 || !Move(discount, Excess(board, prices), prices, bound - best))
            {
                break;
            }
        }

        if (recombine && best <= enough && bound > enough)
        {
            Meet(SectionProgram.Choose([.. sections.Values], view.FirstOf(board) + view.Kerf, view.Kerf, prices));
        }

        inner.Forget();
        return pattern;

        void Meet(List<Section> met)
        {
            var made = PatternFactory.Create(model, board, view.RipFirst, met);
            if (Value(made, prices) is var value && value > best)
            {
                (best, pattern) = (value, made);
            }
        }
    }

    /// <summary>
    /// An upper bound on the value of any proper pattern at prices that give leftovers no worth, and what each row was discounted by for it: no such pattern is worth
    /// more at the discounted prices than the bound less <see cref="Refund"/>. It holds at every step, for sums of prices are exact.
    /// </summary>
    /// <param name="board">The board.</param>
    /// <param name="prices">What everything is worth.</param>
    /// <param name="enough">A value below which the bound need not fall.</param>
    /// <param name="steps">The most steps.</param>
    public (double Bound, double[] Discount) Bound(BoardType board, PriceList prices, double enough, int steps)
    {
        var (best, at) = (double.PositiveInfinity, new double[prices.Need.Length]);
        var discount = new double[prices.Need.Length];
        var (reach, idle) = (1.0, 0);
        for (var step = 0; step < steps; step++)
        {
            inner.Prepare(prices.Less(discount), view.SecondOf(board));
            inner.Open(view.SecondOf(board), view.FirstOf(board));
            var bound = inner.BestValue(board) + Refund(discount, prices);
            if (bound < best)
            {
                (best, at, idle) = (bound, (double[])discount.Clone(), 0);
            }
            else if (++idle % IdleSteps == 0)
            {
                reach /= 2;
            }

            if (best <= enough || !Move(discount, Excess(board, prices), prices, reach * (bound - enough)))
            {
                break;
            }
        }

        inner.Forget();
        return (best, at);
    }

    private static string Key(Section section) =>
        $"{section.First}:{string.Join(',', SectionProgram.Amounts(section).OrderBy(each => each.Row).Select(each => $"{each.Row}x{each.Amount}"))}";

    /// <summary>What a pattern is worth at these prices: what it makes of what is needed, less cuts, and what it leaves.</summary>
    public double Value(Pattern pattern, PriceList prices) => Value(model, pattern, prices);

    /// <inheritdoc cref="Value(Pattern, PriceList)"/>
    public static double Value(PlanningModel model, Pattern pattern, PriceList prices) =>
        pattern.Cover.Sum(cover => (prices.Piece[cover.Row] + prices.PerTick[cover.Row]) * Math.Min(cover.Amount, MostCounted(model, cover.Row, prices.Need[cover.Row])))
        + (prices.WorthWeight * (pattern.Board.WorthConsumed + model.HandlingOf(pattern.Board) - pattern.Worth));

    private static long MostCounted(PlanningModel model, int row, long need) => need <= 0 ? need : need + model.Rows[row].MostCounted - model.Rows[row].Needed;

    /// <summary>What discounts take off a pattern at most: of a row no more counts than the whole need, or what a sub-panel may become.</summary>
    public double Refund(double[] discount, PriceList prices)
    {
        var sum = 0.0;
        for (var row = 0; row < discount.Length; row++)
        {
            sum += discount[row] * Math.Max(0, MostCounted(model, row, prices.Need[row]));
        }

        return sum;
    }

    /// <summary>How much more of each row the knapsacks count than is needed.</summary>
    private long[] Excess(BoardType board, PriceList prices)
    {
        var excess = prices.Need.Select(need => -Math.Max(0, need)).ToArray();
        foreach (var band in inner.Sections(view.FirstOf(board), proper: false).SelectMany(section => section.Bands))
        {
            foreach (var blank in band.Run)
            {
                excess[blank.Row] += Math.Min(blank.Yield, Math.Max(0, prices.Need[blank.Row]));
            }

            if (band.Strip is { } strip)
            {
                excess[strip.Row] += strip.Net;
            }
        }

        return excess;
    }

    /// <summary>One step; false where nothing is counted too often, so that no step helps.</summary>
    private static bool Move(double[] discount, long[] excess, PriceList prices, double gap)
    {
        var moved = Enumerable.Range(0, discount.Length).Where(row => excess[row] > 0 || (discount[row] > 0 && excess[row] < 0)).ToList();
        var length = moved.Sum(row => (double)excess[row] * excess[row]);
        if (length == 0)
        {
            return false;
        }

        var step = Math.Max(gap, 1e-6) / length;
        foreach (var row in moved)
        {
            discount[row] = PriceList.OnGrid(Math.Clamp(discount[row] + (step * excess[row]), 0, prices.Piece[row] + prices.PerTick[row]));
        }

        return true;
    }
}
