using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Boards of one profile with one direction of first cuts, and what prices them.</summary>
internal sealed class BoardView(PlanningModel model, OrientedProfile view, BoardType[] boards)
{
    /// <summary>With so few boards a pattern of each makes too little progress a round: those beside the best are taken as well.</summary>
    private const int FewBoards = 6;

    private readonly ProfilePricer pricer = new(model, view);

    public OrientedProfile Oriented => view;

    public BoardType[] Boards => boards;

    /// <summary>Finds proper patterns where the knapsacks count too much.</summary>
    public ProperPricer Proper { get; } = new(model, view);

    /// <summary>The best value of any pattern of some of the boards.</summary>
    public IEnumerable<(BoardType Board, double Value)> Values(PriceList prices, BoardType[] among) =>
        Opened(prices, among).Select(board => (board, pricer.BestValue(board)));

    /// <summary>The best value of any pattern of each of the boards; nothing more can be asked at these prices.</summary>
    public List<(BoardType Board, double Value)> AllValues(PriceList prices)
    {
        List<(BoardType, double)> values = [.. Values(prices, boards)];
        pricer.Forget();
        return values;
    }

    /// <summary>The boards, each when the pricer is ready for it.</summary>
    private IEnumerable<BoardType> Opened(PriceList prices, BoardType[] among)
    {
        if (among.Length == 0)
        {
            yield break;
        }

        pricer.Prepare(prices, among.Max(view.SecondOf));
        foreach (var alike in among.GroupBy(view.SecondOf))
        {
            pricer.Open(alike.Key, alike.Max(view.FirstOf));
            foreach (var board in alike)
            {
                yield return board;
            }
        }
    }

    /// <summary>
    /// What some boards or areas can make that is worth at least as much as is asked of each; see <see cref="ProfilePricer.Near"/>. Null if it is too much to list.
    /// </summary>
    /// <param name="prices">What everything is worth; leftovers nothing.</param>
    /// <param name="among">The boards or areas.</param>
    /// <param name="least">Least value of each.</param>
    /// <param name="effort">How much work it may be.</param>
    public List<NearArea>? Near(PriceList prices, BoardType[] among, IReadOnlyDictionary<BoardType, double> least, ListingEffort effort)
    {
        var found = new List<NearArea>();
        foreach (var board in Opened(prices, among))
        {
            if (pricer.Near(board, least[board], effort) is not { } patterns)
            {
                return null;
            }

            found.AddRange(patterns.Select(near => new NearArea(near.Made, near.Value, new AreaPattern(board, view.RipFirst, pricer.SectionsOf(near)))));
        }

        pricer.Forget();
        return found;
    }

    /// <summary>The sections of the best pattern of a board within what is still needed, at the prices of the last call of <see cref="Values"/>.</summary>
    public (List<Section> Sections, bool LeftOut) Sections(BoardType board, bool proper, long[]? need)
    {
        pricer.Open(view.SecondOf(board), view.FirstOf(board));
        return (pricer.Sections(view.FirstOf(board), proper, need), pricer.LeftOut);
    }

    /// <summary>The pattern of every board whose value exceeds what the board costs; of areas of boards only the values.</summary>
    /// <param name="prices">What everything is worth.</param>
    /// <param name="boardDuals">What the limits on a board's use count for, by board index.</param>
    /// <param name="weights">How the two costs of a board are added up.</param>
    /// <param name="allowed">Which boards to look at.</param>
    /// <param name="proper">Whether to leave out of the patterns what is counted beyond the need.</param>
    public PricedView Price(PriceList prices, double[] boardDuals, CostWeights weights, Func<BoardType, bool> allowed, bool proper)
    {
        var priced = new PricedView([], [], []);
        foreach (var (board, value) in Values(prices, [.. boards.Where(board => allowed(board.Whole ?? board))]))
        {
            if (board.Whole is not null)
            {
                priced.Areas.Add((board, value));
                continue;
            }

            var cost = weights.OfBoard(model, board) - boardDuals[board.Index];
            if (value <= cost + PatternPricer.Tolerance)
            {
                continue;
            }

            var pattern = PatternFactory.Create(model, board, view.RipFirst, pricer.Sections(view.FirstOf(board), proper));
            var kept = proper ? Proper.Value(pattern, prices) : value;
            priced.Found.Add((cost - kept, pattern));
            priced.Improving += kept > cost + PatternPricer.Tolerance ? 1 : 0;
            if (proper && pricer.LeftOut)
            {
                priced.Lossy.Add(new LossyBoard(this, board, cost, cost - value));
            }

            if (proper && model.Boards.Count <= FewBoards)
            {
                priced.Found.AddRange(Variants(board, prices, cost));
            }
        }

        // Areas of boards are read back once all are priced.
        if (priced.Areas.Count == 0)
        {
            pricer.Forget();
        }

        return priced;
    }

    private List<(double Reduced, Pattern Pattern)> Variants(BoardType board, PriceList prices, double cost) =>
        [.. pricer.Variants(view.FirstOf(board), cost + PatternPricer.Tolerance)
            .Select(sections => PatternFactory.Create(model, board, view.RipFirst, sections))
            .DistinctBy(pattern => pattern.Key, StringComparer.Ordinal)
            .Select(pattern => (cost - Proper.Value(pattern, prices), pattern))
            .Where(each => each.Item1 < -PatternPricer.Tolerance)];
}

/// <summary>A board whose pattern lacks pieces that the knapsacks counted beyond the need.</summary>
/// <param name="View">How it is looked at.</param>
/// <param name="Board">The board.</param>
/// <param name="Cost">What a pattern of it must exceed in value to improve the master problem.</param>
/// <param name="Reduced">The reduced cost that the knapsacks promised.</param>
internal sealed record LossyBoard(BoardView View, BoardType Board, double Cost, double Reduced);

/// <summary>What pricing a view gave.</summary>
/// <param name="Found">Patterns with their reduced costs.</param>
/// <param name="Lossy">Boards whose patterns lack something.</param>
/// <param name="Areas">Best values of areas.</param>
internal sealed record PricedView(
    List<(double Reduced, Pattern Pattern)> Found, List<LossyBoard> Lossy, List<(BoardType Area, double Value)> Areas)
{
    /// <summary>How many of the patterns improve the master problem.</summary>
    public int Improving { get; set; }
}
