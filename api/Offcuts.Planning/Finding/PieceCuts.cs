using Offcuts.Domain;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Finding;

/// <summary>How boards are best cut to give some of one piece in one piece of wood.</summary>
/// <param name="problem">The boards, their sizes as they surely are; no offers.</param>
/// <param name="part">The piece.</param>
/// <param name="wanted">How many are wanted.</param>
internal sealed class PieceCuts(PlanningProblem problem, Part part, int wanted)
{
    /// <summary>
    /// So many board types that the pricer must look at are each looked at alone: how fine its grid is depends on the largest board that it sees, and how
    /// many ways to saw boards with defects are looked at on how many there are, so only then does a board give the same whatever others there are.
    /// </summary>
    private const int MostAlone = 200;

    private static readonly bool[] RipFirst = [false, true];

    private readonly PlanningModel model = new ModelBuilder(problem).Build(new Wanted([new WantedPart(part, Limits.MaxQuantity, part.Species, [])], []));

    /// <summary>What boards of one type give.</summary>
    /// <param name="Boards">The boards of the type.</param>
    /// <param name="Model">The model of which the pattern is; its only row is the piece.</param>
    /// <param name="Gives">The most pieces.</param>
    /// <param name="Cut">How many the pattern makes.</param>
    /// <param name="Pattern">The pattern that makes as many as are wanted, or as many as there are, for the least worth.</param>
    public sealed record Cuts(IReadOnlyList<Board> Boards, PlanningModel Model, int Gives, int Cut, Pattern Pattern);

    /// <summary>Every board type that gives at least one piece.</summary>
    public IEnumerable<Cuts> All() => model.Boards.Where(IsPlain).Select(OfPlain).OfType<Cuts>().Concat(Others());

    // On most boards there is one clear rectangle, and one blank that gives the piece.
    private static bool IsPlain(BoardType board) => board.Profile.Blanks.Length == 1 && board.Boards.All(each => each.Defects.Count == 0);

    /// <summary>
    /// Of blanks that are all alike and lie alike, n along and m across are the most that a rectangle holds, however they are arranged:
    /// n = floor((L + kerf) / (l + kerf)) for blanks of length l on a length L, and m likewise. So the pricer has nothing to look for.
    /// </summary>
    private Cuts? OfPlain(BoardType board)
    {
        var blank = board.Profile.Blanks[0];
        var (along, across) = ((board.Along + model.Kerf) / (blank.Along + model.Kerf), (board.Across + model.Kerf) / (blank.Across + model.Kerf));
        var gives = (int)Math.Min(Limits.MaxQuantity, along * across * blank.Pieces);
        return gives == 0 ? null : new Cuts(board.Boards, model, gives, Math.Min(gives, wanted), InRows(board, blank, Math.Min(gives, wanted)));
    }

    /// <summary>So many pieces in full rows, along the board or across it, whichever spends less worth.</summary>
    private Pattern InRows(BoardType board, BlankOption blank, int pieces)
    {
        var count = (pieces + blank.Pieces - 1) / blank.Pieces;
        var blanks = Enumerable.Repeat(blank, count - 1).Append(blank.Within(pieces - ((count - 1) * (long)blank.Pieces))).ToList();
        return RipFirst.Select(ripFirst =>
        {
            var (first, second, room) = ripFirst ? (blank.Across, blank.Along, board.Along) : (blank.Along, blank.Across, board.Across);
            var inRow = (int)((room + model.Kerf) / (second + model.Kerf));
            return PatternFactory.Create(
                model, board, ripFirst, [.. blanks.Chunk(inRow).Select(row => new Section(first, [.. row.Select(each => new Band(second, [each], null))]))]);
        }).MinBy(pattern => pattern.Worth)!;
    }

    // Boards with defects, and pieces that may be turned or come several from a blank.
    private IEnumerable<Cuts> Others()
    {
        var others = model.Boards.Where(board => !IsPlain(board)).ToHashSet();
        return others.Count == 0 ? []
            : problem.Stock.Count == 1 || others.Count > MostAlone ? Priced(others)
            : others.OrderBy(board => board.Index).AsParallel().AsOrdered().SelectMany(board =>
                new PieceCuts(problem with { Stock = [board.Boards[0]] }, part, wanted).All().Select(cuts => cuts with { Boards = board.Boards }));
    }

    private IEnumerable<Cuts> Priced(HashSet<BoardType> others)
    {
        var pricer = new PatternPricer(model);
        var fullest = Best(Priced(pricer, others, Limits.MaxQuantity, price: 1, worthWeight: 0));
        // So dear that to make one piece more is worth all that a board is.
        var dear = 100 + (2 * others.Max(board => board.WorthConsumed + model.HandlingOf(board)));
        var thriftiest = wanted > 1 ? Best(Priced(pricer, others, wanted, dear, worthWeight: 1)) : [];
        foreach (var board in others.OrderBy(board => board.Index))
        {
            Pattern?[] ways = [OfOne(board), thriftiest.GetValueOrDefault(board), fullest.GetValueOrDefault(board)];
            var known = ways.OfType<Pattern>().ToList();
            if (known.Count > 0)
            {
                var best = Better(known.Where(pattern => Made(pattern) <= wanted));
                yield return new Cuts(board.Boards, model, (int)known.Max(Made), (int)Made(best), best);
            }
        }
    }

    /// <summary>
    /// The way to cut a single piece for the least worth; null if there is none. Unlike the pricer's grid it misses no board on which a blank just fits.
    /// </summary>
    private Pattern? OfOne(BoardType board)
    {
        var ways = board.Divisions.Count == 0
            ? Singles(board).Select(area => PatternFactory.Create(model, board, null, [area]))
            : board.Divisions.SelectMany(division => division.Areas.SelectMany(Singles).Select(single => PatternFactory.Create(
                model, board, division, [.. division.Areas.Select(area => area == single.Area ? single : new AreaPattern(area, false, []))])));
        return ways.MinBy(pattern => pattern.Worth);
    }

    private static IEnumerable<AreaPattern> Singles(BoardType area) =>
        from blank in area.Profile.Blanks
        where blank.Along <= area.Along && blank.Across <= area.Across
        let one = blank.Within(1)
        from section in new[] { (RipFirst: false, First: blank.Along, Second: blank.Across), (RipFirst: true, First: blank.Across, Second: blank.Along) }
        select new AreaPattern(area, section.RipFirst, [new Section(section.First, [new Band(section.Second, [one], null)])]);

    private List<Pattern> Priced(PatternPricer pricer, HashSet<BoardType> boards, int need, double price, double worthWeight) => pricer.Improving(
        Pricing.PriceList.FromDuals(model.Rows, [price], [need], worthWeight), new double[model.Boards.Count], new CostWeights(0, worthWeight), int.MaxValue,
        boards.Contains, CancellationToken.None);

    private static Dictionary<BoardType, Pattern> Best(IEnumerable<Pattern> patterns) =>
        patterns.GroupBy(pattern => pattern.Board).ToDictionary(alike => alike.Key, Better);

    private static Pattern Better(IEnumerable<Pattern> patterns) => patterns.OrderByDescending(Made).ThenBy(pattern => pattern.Worth).First();

    private static long Made(Pattern pattern) => pattern.Cover.Sum(cover => cover.Amount);
}
