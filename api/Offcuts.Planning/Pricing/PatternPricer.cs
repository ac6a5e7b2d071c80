using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Prices all boards of a model: finds the patterns that would improve the master problem.</summary>
internal sealed class PatternPricer
{
    private const double Tolerance = 1e-6;
    private const int MostRepairs = 24;
    private readonly PlanningModel model;

    /// <summary>Cells of the quick grid: enough for sixteenths of an inch on ten feet.</summary>
    private const int QuickCells = 2_000;

    private readonly List<(ProfilePricer Pricer, BoardType[] Boards)> fine;
    private readonly List<(ProfilePricer Pricer, BoardType[] Boards)> quick;
    private readonly int mostCells;
    private List<(ProfilePricer Pricer, BoardType[] Boards)>? relaxed;

    public PatternPricer(PlanningModel model)
    {
        this.model = model;

        // A few boards can be priced on a grid as fine as sizes may ask for; many cannot in a workshop's patience.
        mostCells = model.Boards.Count <= 20 ? 12_000 : 4_000;
        fine = Views(mostCells, roundDown: false);
        quick = fine.Exists(view => view.Pricer.View.MostCellsUsed > QuickCells) ? Views(QuickCells, roundDown: false) : fine;
    }

    private List<(ProfilePricer Pricer, BoardType[] Boards)> Views(int cells, bool roundDown)
    {
        var result = new List<(ProfilePricer, BoardType[])>();
        foreach (var boards in model.Boards.GroupBy(board => board.Profile))
        {
            var all = boards.ToArray();
            var (along, across) = (all.Max(board => board.Along), all.Max(board => board.Across));
            foreach (var ripFirst in new[] { false, true })
            {
                // Where nothing lies side by side, ripping first gives the same patterns again.
                if (ripFirst && boards.Key.Families.Length == 0
                    && (2 * boards.Key.Blanks.Min(blank => blank.Across)) + model.Kerf > across)
                {
                    continue;
                }

                result.Add((new ProfilePricer(model, new OrientedProfile(boards.Key, ripFirst, model.Kerf, (along, across), cells, roundDown)), all));
            }
        }

        return result;
    }

    /// <summary>
    /// Patterns with negative reduced cost, at most one a board and direction and the best <paramref name="most"/> in all; see
    /// <see cref="ProfilePricer.Sections"/> for proper ones. The fine grid is used only where the quick one finds nothing and
    /// <paramref name="thorough"/> asks for it.
    /// </summary>
    public List<Pattern> Improving(
        PriceList prices, double[] boardDuals, CostWeights weights, int most, Func<BoardType, bool> allowed,
        CancellationToken cancellationToken, bool proper = true, bool thorough = true)
    {
        var found = Improving(quick, prices, boardDuals, weights, most, allowed, proper, cancellationToken);
        return found.Count > 0 || quick == fine || !thorough
            ? found
            : Improving(fine, prices, boardDuals, weights, most, allowed, proper, cancellationToken);
    }

    private List<Pattern> Improving(
        List<(ProfilePricer Pricer, BoardType[] Boards)> views, PriceList prices, double[] boardDuals, CostWeights weights, int most,
        Func<BoardType, bool> allowed, bool proper, CancellationToken cancellationToken)
    {
        var found = new List<(double Reduced, Pattern Pattern)>();
        var improper = new List<(double Reduced, OrientedProfile View, BoardType Board)?>();
        foreach (var (pricer, all) in views)
        {
            var boards = all.Where(allowed).ToArray();
            if (boards.Length == 0 || cancellationToken.IsCancellationRequested)
            {
                continue;
            }

            foreach (var (board, value) in Values(pricer, boards, prices))
            {
                var reduced = weights.OfBoard(model, board) - boardDuals[board.Index] - value;
                if (reduced < -Tolerance)
                {
                    found.Add((reduced, PatternFactory.Create(
                        model, board, pricer.View.RipFirst, pricer.Sections(pricer.View.FirstOf(board), proper))));
                    improper.Add(proper && IsCut(found[^1].Pattern, prices, value) ? (reduced, pricer.View, board) : null);
                }
            }
        }

        Repair(found, improper, prices);
        return [.. found.OrderBy(entry => entry.Reduced).Take(most).Select(entry => entry.Pattern)];
    }

    /// <summary>Whether the pattern is worth less than the knapsacks said, because they counted more than is needed.</summary>
    private static bool IsCut(Pattern pattern, PriceList prices, double value) =>
        pattern.Cover.Sum(cover => (prices.Piece[cover.Row] * cover.Amount) + (prices.PerTick[cover.Row] * cover.Amount))
            < value * 0.999;

    /// <summary>Makes the most promising of the patterns that lost pieces anew, within what is needed.</summary>
    private void Repair(
        List<(double Reduced, Pattern Pattern)> found, List<(double Reduced, OrientedProfile View, BoardType Board)?> improper, PriceList prices)
    {
        foreach (var at in Enumerable.Range(0, found.Count).Where(at => improper[at] is not null)
            .OrderBy(at => found[at].Reduced).Take(MostRepairs))
        {
            var (reduced, view, board) = improper[at]!.Value;
            var sections = new ProperSections(model, view).Of(board, prices);
            found.Add((reduced, PatternFactory.Create(model, board, view.RipFirst, sections)));
        }
    }

    /// <summary>Upper bounds on the value of any pattern, by board index; sizes that do not fit the grid are rounded in favour of the bound.</summary>
    public double[] BestValues(PriceList prices)
    {
        var best = new double[model.Boards.Count];
        var bounding = fine.Exists(view => view.Pricer.View.IsCoarse) ? relaxed ??= Views(mostCells, roundDown: true) : fine;
        foreach (var (pricer, boards) in bounding)
        {
            foreach (var (board, value) in Values(pricer, boards, prices))
            {
                best[board.Index] = Math.Max(best[board.Index], value);
            }
        }

        return best;
    }

    private static IEnumerable<(BoardType Board, double Value)> Values(ProfilePricer pricer, BoardType[] boards, PriceList prices)
    {
        pricer.Prepare(prices, boards.Max(pricer.View.SecondOf));
        foreach (var alike in boards.GroupBy(pricer.View.SecondOf))
        {
            pricer.Open(alike.Key, alike.Max(pricer.View.FirstOf));
            foreach (var board in alike)
            {
                yield return (board, pricer.BestValue(board));
            }
        }
    }
}
