using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Prices all boards of a model: finds the patterns that would improve the master problem.</summary>
internal sealed class PatternPricer
{
    /// <summary>A reduced cost nearer to zero than this is none.</summary>
    public const double Tolerance = 1e-6;

    /// <summary>With so many patterns that improve, those that lost pieces need no repair yet.</summary>
    private const int EnoughImproving = 5;

    /// <summary>Cells times blanks from which on several threads are worth their while.</summary>
    private const long WorthParallel = 40_000;

    /// <summary>Cells of the quick grid: enough for sixteenths of an inch on ten feet.</summary>
    private const int QuickCells = 2_000;

    /// <summary>Cells of the rough grid, for the first rounds: quarters of an inch on ten feet.</summary>
    private const int RoughCells = 500;

    /// <summary>As long as the rough grid finds so many patterns, it will do.</summary>
    private const int EnoughRough = 20;

    /// <summary>With fewer boards than this the rough grid is not worth its while.</summary>
    private const int ManyBoards = 20;

    private readonly PlanningModel model;
    private readonly List<BoardView> fine;
    private readonly List<BoardView> quick;
    private readonly List<BoardView> rough;
    private readonly int mostCells;
    private readonly DividedPricer divided;
    private readonly DefectLeftovers leftovers;
    private List<BoardView>? relaxed;

    public PatternPricer(PlanningModel model)
    {
        this.model = model;

        // A few boards can be priced on a grid as fine as sizes may ask for; many cannot in a workshop's patience.
        divided = new DividedPricer(model);
        leftovers = new DefectLeftovers(model);
        mostCells = model.Boards.Count <= ManyBoards ? 12_000 : 4_000;
        fine = Views(mostCells, roundDown: false);
        quick = fine.Exists(view => view.Oriented.MostCellsUsed > QuickCells) ? Views(QuickCells, roundDown: false) : fine;
        rough = quick.Exists(view => view.Oriented.MostCellsUsed > RoughCells) && model.Boards.Count > ManyBoards ? Views(RoughCells, roundDown: false) : quick;
    }

    /// <summary>Views in which no pattern counts for less than it is worth.</summary>
    private List<BoardView> Bounding => fine.Exists(view => view.Oriented.IsCoarse) ? relaxed ??= Views(mostCells, roundDown: true) : fine;

    private List<BoardView> Views(int cells, bool roundDown)
    {
        var result = new List<BoardView>();
        var priced = model.Boards.SelectMany(board => board.Divisions.Count == 0 ? [board] : board.Divisions.SelectMany(division => division.Areas).Distinct());
        foreach (var boards in priced.GroupBy(board => board.Profile))
        {
            var all = boards.ToArray();
            var (along, across) = (all.Max(board => board.Along), all.Max(board => board.Across));
            foreach (var ripFirst in new[] { false, true })
            {
                // Where nothing lies side by side, ripping first gives the same patterns again; but what it leaves may be worth more, which a bound on that must count.
                if (ripFirst && model.CountsHandling && boards.Key.Families.Length == 0
                    && (2 * boards.Key.Blanks.Min(blank => blank.Across)) + model.Kerf > across)
                {
                    continue;
                }

                result.Add(new BoardView(model, new OrientedProfile(boards.Key, ripFirst, model.Kerf, (along, across), cells, roundDown), all));
            }
        }

        return result;
    }

    /// <summary>
    /// Patterns with negative reduced cost, at most one a board and direction and the best <paramref name="most"/> in all; see
    /// <see cref="ProfilePricer.Sections"/> for proper ones. The rough grid is used as long as it finds many, the fine grid only where the quick one finds nothing and
    /// <paramref name="thorough"/> asks for it.
    /// </summary>
    public List<Pattern> Improving(
        PriceList prices, double[] boardDuals, CostWeights weights, int most, Func<BoardType, bool> allowed,
        CancellationToken cancellationToken, bool proper = true, bool thorough = true)
    {
        if (cancellationToken.IsCancellationRequested)
        {
            return [];
        }

        if (rough != quick && proper
            && Improving(rough, prices, boardDuals, weights, most, allowed, proper, thorough: false) is { Count: >= EnoughRough } roughly)
        {
            return roughly;
        }

        var found = Improving(quick, prices, boardDuals, weights, most, allowed, proper, thorough && quick == fine);
        return found.Count > 0 || quick == fine || !thorough
            ? found
            : Improving(fine, prices, boardDuals, weights, most, allowed, proper, thorough);
    }

    private List<Pattern> Improving(
        List<BoardView> views, PriceList prices, double[] boardDuals, CostWeights weights, int most,
        Func<BoardType, bool> allowed, bool proper, bool thorough)
    {
        var each = new PricedView[views.Count];
        Each(views, index => each[index] = views[index].Price(prices, boardDuals, weights, allowed, proper));
        var found = each.SelectMany(view => view.Found).ToList();
        var lossy = each.SelectMany(view => view.Lossy).ToList();
        var best = DividedPricer.Best(views, each.Select(view => view.Areas));
        var (patterns, lacking) = divided.Price(best, prices, boardDuals, weights, allowed, proper, most);
        found.AddRange(patterns);
        var improving = each.Sum(view => view.Improving) + patterns.Count(entry => entry.Reduced < -Tolerance);
        if (improving < EnoughImproving)
        {
            found.AddRange(divided.Repair(views, lacking, prices));
            lossy.Sort((one, other) => one.Reduced.CompareTo(other.Reduced));
            found.AddRange(PatternRepair.Cheap(model, lossy, prices));
            if (thorough && !found.Exists(entry => entry.Reduced < -Tolerance))
            {
                found.AddRange(PatternRepair.Thorough(lossy, prices));
            }
        }

        return [.. found.Where(entry => entry.Pattern.Cover.Length > 0).OrderBy(entry => entry.Reduced).Take(most).Select(entry => entry.Pattern)];
    }

    /// <summary>Does something with every view, several at a time where it is worth it; each has its own pricer, so the outcome is the same.</summary>
    private static void Each(List<BoardView> views, Action<int> action)
    {
        if (views.Count > 1 && views.Sum(view => view.Oriented.Work) > WorthParallel)
        {
            Parallel.For(0, views.Count, index => action(index));
            return;
        }

        for (var index = 0; index < views.Count; index++)
        {
            action(index);
        }
    }

    /// <summary>
    /// Patterns that between them make all that any pattern worth at least so much makes; null if they are too many or without number.
    /// Where sizes do not fit the grid, some of them cannot be cut: good for a bound, not for a plan.
    /// </summary>
    /// <param name="prices">What everything is worth; leftovers nothing.</param>
    /// <param name="boards">The boards.</param>
    /// <param name="least">Least value by board index.</param>
    /// <param name="effort">How much work it may be.</param>
    /// <param name="exact">Whether every pattern can be cut.</param>
    public List<Pattern>? Near(PriceList prices, IReadOnlySet<BoardType> boards, double[] least, ListingEffort effort, out bool exact)
    {
        var views = Bounding;
        exact = views == fine;
        return new PatternLister(model, views).Near(prices, boards, least, effort);
    }

    /// <summary>
    /// Upper bounds on the value of any pattern that makes anything, every leftover counted, by board index, at prices that ask for that
    /// (<see cref="PriceList.WithAllLeftovers"/>); sizes that do not fit the grid are rounded in favour of the bound.
    /// </summary>
    public double[] BestValuesWithLeftovers(PriceList prices)
    {
        var bounding = Bounding;
        var each = new List<(BoardType Board, double Value)>[bounding.Count];
        Each(bounding, index => each[index] = bounding[index].AllValues(prices));
        var values = new Dictionary<BoardType, double>();
        foreach (var (board, value) in each.SelectMany(view => view))
        {
            values[board] = Math.Max(values.GetValueOrDefault(board), value);
        }

        var whole = WholeDemand(prices);
        return [.. model.Boards.Select(board => DefectLeftovers.Concern(board)
            ? Math.Min(leftovers.Value(board, area => values.GetValueOrDefault(area)), whole[board.Profile] + (prices.WorthWeight * leftovers.Most(board)))
            : Math.Min(values.GetValueOrDefault(board), whole[board.Profile] + (prices.WorthWeight * board.Profile.WorthOf(board.Along, board.Across))))];
    }

    /// <summary>Upper bounds on the value of any pattern at prices that give leftovers no worth, by board index; sizes that do not fit the grid are rounded in favour of the bound.</summary>
    public double[] BestValues(PriceList prices)
    {
        var best = new double[model.Boards.Count];
        var bounding = Bounding;
        var each = new List<(BoardType Board, double Value)>[bounding.Count];
        Each(bounding, index => each[index] = bounding[index].AllValues(prices));
        foreach (var (board, value) in each.SelectMany(view => view).Where(entry => entry.Board.Whole is null))
        {
            best[board.Index] = Math.Max(best[board.Index], value);
        }

        foreach (var (board, value) in divided.BestValues(DividedPricer.Best(bounding, each.Select(view => view.Where(entry => entry.Board.Whole is not null)))))
        {
            best[board.Index] = value;
        }

        var whole = WholeDemand(prices);
        foreach (var board in model.Boards)
        {
            best[board.Index] = Math.Min(best[board.Index], whole[board.Profile]);
        }

        return best;
    }

    /// <summary>However the knapsacks count, no pattern makes more than all that is needed of what its board can make.</summary>
    private Dictionary<Profile, double> WholeDemand(PriceList prices) => model.Profiles.ToDictionary(profile => profile, profile => prices.OfDemand(
        profile.Blanks.Select(blank => blank.Row).Concat(profile.Families.SelectMany(family => family.Rows)).Distinct()));
}
