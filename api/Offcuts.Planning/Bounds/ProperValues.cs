using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Bounds;

/// <summary>
/// What boards are worth at most with proper patterns. The knapsacks may count a part more often than it is needed, and so overrate a board. Where they promise
/// more than the board costs in a linear program, all proper patterns worth more than that are listed: if there is none, the board is worth no more; if there
/// are, the best of them is what it is worth.
/// </summary>
internal sealed class ProperValues(PlanningModel model, PatternPricer pricer, Func<bool> isTimeUp)
{
    /// <summary>Steps after which the listing for one board is given up.</summary>
    private const long MostEffort = 300_000;

    /// <summary>With more boards a listing for each takes longer than it is worth.</summary>
    private const int MostBoards = 1000;

    /// <summary>Boards of which it was once too much to list: it is not tried again.</summary>
    private readonly HashSet<BoardType> givenUp = [];

    /// <summary>Boards that the knapsacks may overrate still: their value stands.</summary>
    public HashSet<BoardType> Untold { get; } = [];

    /// <summary>The patterns worth more than their board costs that the last call met.</summary>
    public List<Pattern> Better { get; } = [];

    /// <summary>Upper bounds on what boards are worth, by board index.</summary>
    /// <param name="prices">What everything is worth; leftovers nothing.</param>
    /// <param name="costs">What each board costs in the linear program, by board index.</param>
    public double[] Of(PriceList prices, double[] costs)
    {
        Untold.Clear();
        Better.Clear();
        var values = pricer.BestValues(prices);

        // What patterns are worth is on the grid: none lies between the cost and the grid's value below, and sums with that are exact.
        var least = costs.Select(cost => PriceList.OnGrid(cost + PatternPricer.Tolerance)).ToArray();
        foreach (var board in model.Boards.Where(board => values[board.Index] > least[board.Index]))
        {
            if (model.Boards.Count > MostBoards || givenUp.Contains(board) || pricer.Near(prices, new HashSet<BoardType> { board }, least, new ListingEffort(MostEffort, isTimeUp), out var exact) is not { } better)
            {
                givenUp.Add(board);
                Untold.Add(board);
                continue;
            }

            values[board.Index] = better.Select(pattern => Value(pattern, prices)).Append(least[board.Index]).Max();
            Better.AddRange(exact ? better : []);
        }

        return values;
    }

    private static double Value(Pattern pattern, PriceList prices) =>
        pattern.Cover.Sum(cover => prices.Piece[cover.Row] * Math.Min(cover.Amount, prices.Need[cover.Row]));
}
