using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Finding;

/// <summary>How boards are best cut to give some of one piece, which is the only row of the model.</summary>
/// <param name="model">The model.</param>
/// <param name="wanted">How many are wanted.</param>
internal sealed class PieceCuts(PlanningModel model, int wanted)
{
    private readonly PatternPricer pricer = new(model);
    private readonly double[] noDuals = new double[model.Boards.Count];

    /// <summary>What boards of one type give.</summary>
    /// <param name="Gives">The most pieces.</param>
    /// <param name="Cut">How many the pattern makes.</param>
    /// <param name="Pattern">The pattern that makes as many as are wanted, or as many as there are, for the least worth.</param>
    public sealed record Cuts(int Gives, int Cut, Pattern Pattern);

    /// <summary>Every board type that gives at least one piece.</summary>
    public IEnumerable<Cuts> All()
    {
        var fullest = Best(Priced(Domain.Limits.MaxQuantity, price: 1, worthWeight: 0));
        // So dear that to make one piece more is worth all that a board is.
        var dear = 100 + (2 * model.Boards.Select(board => board.WorthConsumed + model.HandlingOf(board)).DefaultIfEmpty(0).Max());
        var thriftiest = wanted > 1 ? Best(Priced(wanted, dear, worthWeight: 1)) : [];
        foreach (var board in model.Boards)
        {
            Pattern?[] ways = [OfOne(board), thriftiest.GetValueOrDefault(board), fullest.GetValueOrDefault(board)];
            var known = ways.OfType<Pattern>().ToList();
            if (known.Count == 0)
            {
                continue;
            }

            var best = Better(known.Where(pattern => Made(pattern) <= wanted));
            yield return new Cuts((int)known.Max(Made), (int)Made(best), best);
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

    private List<Pattern> Priced(int need, double price, double worthWeight) => pricer.Improving(
        PriceList.FromDuals(model.Rows, [price], [need], worthWeight), noDuals, new CostWeights(0, worthWeight), int.MaxValue, _ => true, CancellationToken.None);

    private static Dictionary<BoardType, Pattern> Best(IEnumerable<Pattern> patterns) =>
        patterns.GroupBy(pattern => pattern.Board).ToDictionary(alike => alike.Key, Better);

    private static Pattern Better(IEnumerable<Pattern> patterns) => patterns.OrderByDescending(Made).ThenBy(pattern => pattern.Worth).First();

    private static long Made(Pattern pattern) => pattern.Cover.Sum(cover => cover.Amount);
}
