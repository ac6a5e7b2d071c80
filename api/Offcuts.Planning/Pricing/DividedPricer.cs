using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// Prices boards that fall into areas: a board's best value is the largest over its divisions of the sum over the division's areas of the best
/// value of a pattern of the area. As for one board, needs bound the counts within an area only, so that the sum is an upper bound.
/// </summary>
internal sealed class DividedPricer(PlanningModel model)
{
    private const int MostRepairs = 6;
    private const int RepairSteps = 6;
    private const int DivisionsRepaired = 2;

    /// <summary>Of so few boards a pattern of each of the best divisions is made: needs couple the areas, so that the first is not always the best.</summary>
    private const int FewBoards = 10;
    private const int DivisionsOfFew = 4;
    private readonly BoardType[] boards = [.. model.Boards.Where(board => board.Divisions.Count > 0)];

    /// <summary>The best value of every area, and the view in which it has it.</summary>
    public static Dictionary<BoardType, BestOfArea> Best(IEnumerable<BoardView> views, IEnumerable<IEnumerable<(BoardType Area, double Value)>> values)
    {
        var best = new Dictionary<BoardType, BestOfArea>();
        foreach (var (view, (area, value)) in views.Zip(values).SelectMany(pair => pair.Second.Select(each => (pair.First, each))))
        {
            if (!best.TryGetValue(area, out var known) || value > known.Value)
            {
                best[area] = new BestOfArea(value, view);
            }
        }

        return best;
    }

    /// <summary>Upper bounds on the value of any pattern of the boards, at prices that give leftovers no worth.</summary>
    public IEnumerable<(BoardType Board, double Value)> BestValues(Dictionary<BoardType, BestOfArea> best) =>
        boards.Select(board => (board, board.Divisions.Max(division => division.Areas.Sum(area => best[area].Value))));

    /// <summary>
    /// The patterns whose value exceeds what the board costs, of the division of each board that is worth most, at most so many; and the boards
    /// whose patterns lack something that the knapsacks counted too often.
    /// </summary>
    public (List<(double Reduced, Pattern Pattern)> Found, List<(BoardType Board, double Cost, double Reduced)> Lossy) Price(
        Dictionary<BoardType, BestOfArea> best, PriceList prices, double[] boardDuals, CostWeights weights, Func<BoardType, bool> allowed, bool proper, int most)
    {
        var (found, lossy) = (new List<(double, Pattern)>(), new List<(BoardType, double, double)>());
        var worthwhile = boards.Where(allowed)
            .Select(board => (Board: board, Cost: weights.OfBoard(model, board) - boardDuals[board.Index]))
            .SelectMany(entry => Ranked(entry.Board, best, prices).Take(boards.Length <= FewBoards ? DivisionsOfFew : 1)
                .Select(division => (entry.Board, entry.Cost, Best: division)))
            .Where(entry => entry.Best.Value > entry.Cost + PatternPricer.Tolerance)
            .OrderBy(entry => entry.Cost - entry.Best.Value).Take(most);
        foreach (var (board, cost, (division, value)) in worthwhile)
        {
            var (pattern, leftOut) = Read(board, division, best, prices, proper);
            found.Add((cost - (proper ? Value(pattern, prices) : value), pattern));
            if (proper && leftOut)
            {
                lossy.Add((board, cost, cost - value));
            }
        }

        return (found, lossy);
    }

    /// <summary>New patterns within what is needed, area by area, for the most promising of the boards.</summary>
    public IEnumerable<(double Reduced, Pattern Pattern)> Repair(
        IReadOnlyList<BoardView> views, IEnumerable<(BoardType Board, double Cost, double Reduced)> lossy, PriceList prices)
    {
        foreach (var (board, cost, _) in lossy.OrderBy(entry => entry.Reduced).DistinctBy(entry => entry.Board).Take(MostRepairs))
        {
            foreach (var division in board.Divisions.OrderByDescending(division => division.Areas.Sum(area => (double)area.Along * area.Across)).Take(DivisionsRepaired))
            {
                var pattern = Made(views, board, division, prices);
                yield return (cost - Value(pattern, prices), pattern);
            }
        }
    }

    private List<(Division Division, double Value)> Ranked(BoardType board, Dictionary<BoardType, BestOfArea> best, PriceList prices) => [.. board.Divisions
        .Select(division => (division, Value: division.Areas.Sum(area => best[area].Value) - (prices.WorthWeight * PatternFactory.Freeing(model, division))))
        .OrderByDescending(entry => entry.Value)];

    /// <summary>Reads the best patterns of the areas back, the most valuable first; what one takes is not needed of the next.</summary>
    private (Pattern Pattern, bool LeftOut) Read(BoardType board, Division division, Dictionary<BoardType, BestOfArea> best, PriceList prices, bool proper)
    {
        var need = proper ? (long[])prices.Need.Clone() : null;
        var leftOut = false;
        var areas = new List<AreaPattern>();
        foreach (var area in division.Areas.OrderByDescending(area => best[area].Value))
        {
            var view = best[area].View;
            var (sections, lacks) = view.Sections(area, proper, need);
            leftOut |= lacks;
            areas.Add(new AreaPattern(area, view.Oriented.RipFirst, sections));
        }

        return (PatternFactory.Create(model, board, division, areas), leftOut);
    }

    private Pattern Made(IReadOnlyList<BoardView> views, BoardType board, Division division, PriceList prices)
    {
        var need = (long[])prices.Need.Clone();
        var areas = new List<AreaPattern>();
        foreach (var area in division.Areas.OrderByDescending(area => (double)area.Along * area.Across))
        {
            var left = prices.With((long[])need.Clone());
            var made = views.Where(view => view.Oriented.Profile == area.Profile)
                .SelectMany(view => new[]
                {
                    PatternFactory.Create(model, area, view.Oriented.RipFirst, new ProperSections(model, view.Oriented).Of(area, left)),
                    view.Proper.Of(area, left, 0, RepairSteps, recombine: false),
                })
                .OfType<Pattern>().MaxBy(pattern => Value(pattern, left));
            foreach (var (row, amount) in made?.Cover ?? [])
            {
                need[row] = Math.Max(0, need[row] - amount);
            }

            areas.Add(made?.Areas[0] ?? new AreaPattern(area, false, []));
        }

        return PatternFactory.Create(model, board, division, areas);
    }

    private double Value(Pattern pattern, PriceList prices) => ProperPricer.Value(model, pattern, prices);
}

/// <summary>The best value of an area.</summary>
/// <param name="Value">The value.</param>
/// <param name="View">The view that gives it.</param>
internal readonly record struct BestOfArea(double Value, BoardView View);
