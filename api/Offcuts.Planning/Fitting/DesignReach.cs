using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Fitting;

/// <summary>
/// What a design can touch of the stock and of the offers, and the best that it can come to by areas alone: a cheap relaxation, in which pieces may be
/// cut in any shape and defects are not heeded.
/// </summary>
public sealed class DesignReach
{
    private DesignReach(SavedDesign design, IReadOnlyList<Board> boards, IReadOnlyList<Offer> offers, FitFigures optimistic)
    {
        (Design, Boards, Offers, Optimistic) = (design, boards, offers, optimistic);
    }

    /// <summary>The design.</summary>
    public SavedDesign Design { get; }

    /// <summary>The boards from which any of its parts might be cut. No other board changes its plan.</summary>
    public IReadOnlyList<Board> Boards { get; }

    /// <summary>The offers from which any of its parts might be cut.</summary>
    public IReadOnlyList<Offer> Offers { get; }

    /// <summary>No plan comes to figures that rank before these.</summary>
    public FitFigures Optimistic { get; }

    /// <summary>Works it out.</summary>
    /// <param name="stock">What there is.</param>
    /// <param name="design">The design; its parts name concrete species.</param>
    public static DesignReach Of(FitStock stock, SavedDesign design)
    {
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentNullException.ThrowIfNull(design);
        var touched = Touched.Of(stock, design.Design);
        return new DesignReach(
            design, [.. touched.Boards.Select(piece => piece.Board!).OrderBy(board => board.Id, StringComparer.Ordinal)], touched.Offers,
            Figures(design.Design, touched.Sources));
    }

    /// <summary>What no plan that makes all of a problem's design spends less than on wood, however it cuts the boards.</summary>
    /// <param name="problem">The problem, its boards as they surely are.</param>
    internal static Money LeastWoodCost(PlanningProblem problem)
    {
        // What the boards' sizes are is settled: nothing is to be taken off them a second time.
        var stock = new FitStock(problem with { Stock = [.. problem.Stock.Select(board => board with { Estimates = default })] });
        return Of(stock, new SavedDesign("", "", problem.Design)).Optimistic.Cost - problem.Design.ItemCost;
    }

    /// <summary>The problem of planning it. What it cannot touch is left out: it would only cost time.</summary>
    public PlanningProblem Problem(FitStock stock)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return stock.Shop with { Stock = Boards, Offers = Offers, Design = Design.Design };
    }

    /// <summary>The problem of building it for nothing from few boards; null if that is out of the question.</summary>
    internal PlanningProblem? SmallProblem(FitStock stock)
    {
        // Worked out once more: of all designs that are looked at, few are planned, and it would fill the memory.
        var touched = Optimistic.Missing == 0 ? Touched.Of(stock, Design.Design) : null;
        return touched is not null && new ShortList(Design.Design, touched.Rows, touched.Sources, touched.Boards).Pick() is { } few
            ? Problem(stock) with { Stock = few, Offers = [] }
            : null;
    }

    private static FitFigures Figures(Design design, RowSources sources)
    {
        var wood = new FinishedWood(design);
        var members = design.Parts.Select(part => (part.Name, part.Quantity)).Concat(design.Panels.Select(panel => (panel.Name, panel.Quantity))).ToList();
        var missing = members.Where(member => !sources.IsServed(member.Name)).Sum(member => member.Quantity);
        var total = FitOutcome.Rounded(wood.Total);
        var fromStock = FitOutcome.Rounded(members.Where(member => sources.IsServedByStock(member.Name)).Sum(member => wood.Each(member.Name) * member.Quantity));
        var items = design.ItemCost.MinorUnits;
        return new FitFigures(
            missing, new Money(items + sources.LeastMoney()), total == 0 ? 1 : fromStock / total, fromStock, (decimal)sources.MostEaten());
    }

    /// <summary>What a design can touch, with its rows.</summary>
    private sealed record Touched(List<DemandRow> Rows, RowSources Sources, List<FitPiece> Boards, List<Offer> Offers)
    {
        public static Touched Of(FitStock stock, Design design)
        {
            var rows = new WantedRows(stock.Shop.Shop).Of(Wanted.All(design));
            var touched = new Touched(rows, new RowSources(rows, stock.Shop.Shop, new FinishedWood(design)), [], []);
            foreach (var piece in rows.SelectMany(row => row.Species).Distinct(StringComparer.Ordinal).SelectMany(species => stock.BySpecies[species]))
            {
                touched.Take(piece);
            }

            return touched;
        }

        private void Take(FitPiece piece)
        {
            if (!Sources.Take(piece))
            {
                return;
            }

            if (piece.Offer is not { } size)
            {
                Boards.Add(piece);
            }
            else if (Offers.Count == 0 || Offers[^1] != size.Offer)
            {
                Offers.Add(size.Offer);
            }
        }
    }
}
