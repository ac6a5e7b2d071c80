namespace Offcuts.Domain;

/// <summary>What is kept of a plan to rank its design: no geometry, only what it takes and gives.</summary>
public sealed record FitOutcome
{
    /// <summary>Board feet are kept to a millionth.</summary>
    public const double Precision = 1e-6;

    /// <summary>How far the planner searched.</summary>
    public required PlanEffort Effort { get; init; }

    /// <summary>Money for wood.</summary>
    public required Money WoodCost { get; init; }

    /// <summary>What suppliers charge beyond the wood and the items.</summary>
    public Money ChargeCost { get; init; }

    /// <summary>What further suppliers count, though nobody is paid for it.</summary>
    public Money StopCost { get; init; }

    /// <summary>No plan for as many pieces has a smaller <see cref="Outlay"/>.</summary>
    public required Money WoodBound { get; init; }

    /// <summary>Money for what is bought ready made.</summary>
    public required Money ItemCost { get; init; }

    /// <summary>Parts and panels that cannot be had, each once.</summary>
    public IReadOnlyList<MissingPart> Missing { get; init; } = [];

    /// <summary>Board feet of all finished parts and panels that the design asks for, to a millionth.</summary>
    public required decimal BoardFeet { get; init; }

    /// <summary>Board feet of those that come from stock, to a millionth.</summary>
    public required decimal BoardFeetFromStock { get; init; }

    /// <summary>The boards that are cut, each once.</summary>
    public IReadOnlyList<StockUse> Uses { get; init; } = [];

    /// <summary>The wood to buy.</summary>
    public IReadOnlyList<FitPurchase> Purchases { get; init; } = [];

    /// <summary>Pieces missing.</summary>
    public int MissingCount => Missing.Sum(part => part.Quantity);

    /// <summary>Whether nothing is missing and nothing cheaper exists.</summary>
    public bool IsProved => Missing.Count == 0 && Outlay == WoodBound;

    /// <summary>Money still to spend.</summary>
    public Money Cost => WoodCost + ChargeCost + ItemCost;

    /// <summary>What plans are chosen by (<see cref="Plan.Outlay"/>).</summary>
    public Money Outlay => WoodCost + ChargeCost + StopCost;

    /// <summary>The share of the finished wood that comes from stock; 1 for a design without any.</summary>
    public decimal ShareFromStock => BoardFeet == 0 ? 1 : BoardFeetFromStock / BoardFeet;

    /// <summary>What it is ranked by.</summary>
    /// <param name="weightOf">What a board foot from a board counts, in minor units; 0 for a board that does not count.</param>
    public FitFigures Figures(Func<string, decimal> weightOf) =>
        new(MissingCount, Outlay + ItemCost, ShareFromStock, BoardFeetFromStock, Uses.Sum(use => use.BoardFeet * weightOf(use.BoardId)));

    /// <summary>What a plan gives.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="design">The design that it makes.</param>
    /// <param name="effort">How far it was searched.</param>
    public static FitOutcome Of(Plan plan, Design design, PlanEffort effort)
    {
        var wood = new FinishedWood(design);
        var boards = wood.ByBoard(plan);
        var total = wood.Total;
        return new FitOutcome
        {
            Effort = effort,
            WoodCost = plan.WoodCost,
            ChargeCost = plan.ChargeCost,
            StopCost = plan.StopCost,
            WoodBound = plan.WoodBound,
            ItemCost = plan.ItemCost,
            Missing = plan.Missing,
            BoardFeet = Rounded(total),
            // From what does not come from stock, so that it is exactly the total where all does.
            BoardFeetFromStock = Rounded(total - wood.Of(plan.Missing) - boards.Where(each => each.Board.BoardId is null).Sum(each => each.BoardFeet)),
            Uses = [.. boards.Where(each => each.Board.BoardId is not null).GroupBy(each => each.Board.BoardId!, StringComparer.Ordinal)
                .Select(cuts => new StockUse(cuts.Key, cuts.Count(), Rounded(cuts.Sum(each => each.BoardFeet))))],
            Purchases = [.. plan.Purchases.Select(purchase => new FitPurchase(purchase.Offer.Offer.Id, purchase.Offer.Size, purchase.Count))],
        };
    }

    /// <summary>Board feet as they are kept: to the next millionth.</summary>
    public static decimal Rounded(decimal boardFeet) => decimal.Round(boardFeet, 6);
}

/// <summary>A board in stock that a plan cuts.</summary>
/// <param name="BoardId">Its id.</param>
/// <param name="Count">How many of those alike.</param>
/// <param name="BoardFeet">What they give of the finished parts and panels that the design asks for, to a millionth of a board foot.</param>
public sealed record StockUse(string BoardId, int Count, decimal BoardFeet);

/// <summary>Wood that a build takes from an offer.</summary>
/// <param name="OfferId">The offer.</param>
/// <param name="Size">The size of each.</param>
/// <param name="Count">How many.</param>
public sealed record FitPurchase(string OfferId, Dimensions Size, int Count);
