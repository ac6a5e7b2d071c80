using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Restart;

namespace Offcuts.Planning.Search;

/// <summary>
/// What of a component costs money: the parts and panels that its linear program has a price for, and the boards that can make any of them. Whoever has much wood but must buy
/// some of one kind has mostly boards that can make nothing of what must be bought (of ten thousand boards, those on offer alone). As nothing else is asked and no other board
/// could make any of it, the least money for the core is a bound for the whole; and a plan for it, with the rest made of boards that are owned, mostly is a plan for
/// as much. The core's own components share no board and are searched apart.
/// </summary>
internal sealed class PaidCore
{
    /// <summary>A price of a row, in minor units, that may be an error of rounding.</summary>
    private const double Trifle = 1e-4;
    private readonly List<ComponentSearch> parts;
    private readonly IReadOnlySet<string> names;
    private readonly PatternTransfer transfer;

    private PaidCore(PlanningModel model, IReadOnlySet<string> names, List<ComponentSearch> parts)
    {
        (this.names, this.parts) = (names, parts);
        transfer = new PatternTransfer(model);
    }

    /// <summary>The parts and panels that a linear program of the money alone has a price for.</summary>
    /// <param name="model">The model.</param>
    /// <param name="duals">The prices, by row.</param>
    public static HashSet<string> Priced(PlanningModel model, double[] duals) =>
        model.Rows.Where(row => duals[row.Index] > Trifle).Select(row => row.Name).ToHashSet(StringComparer.Ordinal);

    /// <summary>The parts and panels of which no board that is owned can make anything.</summary>
    public static HashSet<string> OnlyBought(PlanningModel model) => NotOf(model, board => board.Price == 0);

    /// <summary>The core around some parts and panels; null where it is not much smaller than the whole.</summary>
    /// <param name="model">The whole.</param>
    /// <param name="wanted">What it is to make.</param>
    /// <param name="priced">The names of what costs money.</param>
    /// <param name="pricer">Tells which boards can make what.</param>
    /// <param name="searches">Opens the searches for its components: one for all choices of species that have the same.</param>
    public static PaidCore? Of(PlanningModel model, Wanted wanted, IReadOnlySet<string> priced, PatternPricer pricer, PaidCores searches)
    {
        var prices = PriceList.FromDuals(
            model.Rows, [.. model.Rows.Select(row => priced.Contains(row.Name) ? 1.0 : 0)], [.. model.Rows.Select(row => row.Needed)], 0);
        var values = pricer.BestValues(prices);
        var boards = model.Boards.Where(board => values[board.Index] > 0).ToList();
        if (boards.Count == 0 || 2 * boards.Count > model.Boards.Count)
        {
            return null;
        }

        // What no other board can make belongs to it as well, though it may have room in what the rest leaves.
        var names = NotOf(model, board => values[board.Index] <= 0);
        names.UnionWith(priced);
        var paid = new Wanted([.. wanted.Parts.Where(part => names.Contains(part.Part.Name))], [.. wanted.Panels.Where(panel => names.Contains(panel.Panel.Name))]);
        return new PaidCore(model, names, searches.Of(model.Problem, boards, paid));
    }

    /// <summary>Whether it has all of these parts and panels.</summary>
    public bool Has(IEnumerable<string> priced) => names.IsSupersetOf(priced);

    private static HashSet<string> NotOf(PlanningModel model, Func<BoardType, bool> some)
    {
        var made = model.Boards.Where(some).SelectMany(RowsOf).ToHashSet();
        var names = model.Rows.Where(row => made.Contains(row.Index)).Select(row => row.Name).ToHashSet(StringComparer.Ordinal);
        return [.. model.Rows.Select(row => row.Name).Where(name => !names.Contains(name))];
    }

    /// <summary>The rows of which a board can make anything.</summary>
    private static IEnumerable<int> RowsOf(BoardType board) => (board.Divisions.Count == 0 ? [board] : board.Divisions.SelectMany(division => division.Areas))
        .SelectMany(area => area.Profile.Blanks.Where(blank => blank.Along <= area.Along && blank.Across <= area.Across).Select(blank => blank.Row)
            .Concat(area.Profile.Families.Where(family => family.Along <= area.Along && family.Narrowest + family.Edge <= area.Across).SelectMany(family => family.Rows)))
        .Distinct();

    /// <summary>Whether no plan for the core costs less than the one at hand.</summary>
    public bool IsProved => parts.TrueForAll(part => part.IsProved);

    /// <summary>No plan for the whole costs less, in minor units.</summary>
    public long Bound => parts.Sum(part => part.RoundedBound);

    /// <summary>The money of the best plan for the core, in minor units; null where something is missing.</summary>
    public long? Money => parts.TrueForAll(part => part.Best is { IsComplete: true }) ? parts.Sum(part => part.Best!.Money) : null;

    /// <summary>First plans, linear programs and dives.</summary>
    public void Begin()
    {
        foreach (var part in parts)
        {
            part.Start();
            part.Relax();
            part.FirstDives();
        }
    }

    /// <summary>Raises the bound until it reaches <paramref name="known"/>, the cost of a plan for the whole, or the time given is over.</summary>
    public void Raise(long known, TimeSpan share)
    {
        foreach (var part in parts.Where(part => part.Best is { IsComplete: true }))
        {
            part.RaiseBound(Math.Min(part.Best!.Money, known - (Bound - part.RoundedBound)), share / parts.Count);
        }
    }

    /// <summary>One round more; see <see cref="ComponentSearch.Deepen"/>.</summary>
    public void Deepen(int round)
    {
        foreach (var part in parts.Where(part => !part.IsProved))
        {
            part.Deepen(round);
        }
    }

    /// <summary>
    /// The best plan for the core as cuts of the whole's boards, without those of the shop's own that cannot be told as such, for which the whole has to find others; null where something
    /// is missing or a bought board cannot be told.
    /// </summary>
    public List<(Pattern Pattern, int Count)>? Cuts()
    {
        var cuts = new List<(Pattern, int)>();
        foreach (var (cut, model) in Money is null ? [] : parts.SelectMany(part => part.Best!.Cuts, (part, cut) => (cut, part.Model)))
        {
            var pattern = transfer.Of(cut.Pattern, model);
            if (pattern is not null && pattern.Cover.Sum(cover => cover.Amount) == cut.Pattern.Cover.Sum(cover => cover.Amount))
            {
                cuts.Add((pattern, cut.Count));
            }
            else if (cut.Pattern.Money > 0)
            {
                return null;
            }
        }

        return cuts.Count == 0 ? null : cuts;
    }
}
