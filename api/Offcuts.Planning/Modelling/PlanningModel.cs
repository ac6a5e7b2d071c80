using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>The problem as the search sees it: rows to cover, board types to cut, supplies that limit them.</summary>
internal sealed class PlanningModel
{
    public required PlanningProblem Problem { get; init; }

    public required IReadOnlyList<DemandRow> Rows { get; init; }

    public required IReadOnlyList<Profile> Profiles { get; init; }

    public required IReadOnlyList<BoardType> Boards { get; init; }

    public required IReadOnlyList<Supply> Supplies { get; init; }

    /// <summary>The panels whose sub-panels share out their width.</summary>
    public IReadOnlyList<SplitPanel> Splits => splits ??= SplitPanel.Of(Rows);

    private List<SplitPanel>? splits;

    /// <summary>Whether the second objective has what handling counts; without it, it is worth consumed less worth returned, as a plan tells them.</summary>
    public bool CountsHandling { get; init; } = true;

    /// <summary>The same problem with nothing but worth in the second objective.</summary>
    public PlanningModel WithoutHandling() => With(Rows, Supplies, countsHandling: false);

    /// <summary>The same boards for other needs, from other supplies.</summary>
    public PlanningModel With(IReadOnlyList<DemandRow> rows, IReadOnlyList<Supply> supplies) => With(rows, supplies, CountsHandling);

    // What is worked out from rows and boards when it is first asked for is not taken over.
    private PlanningModel With(IReadOnlyList<DemandRow> rows, IReadOnlyList<Supply> supplies, bool countsHandling) => new()
    {
        Problem = Problem,
        Rows = rows,
        Profiles = Profiles,
        Boards = Boards,
        Supplies = supplies,
        CountsHandling = countsHandling,
    };

    public long Kerf => Problem.Shop.Kerf.Ticks;

    public bool Recut => Problem.Shop.Recut;

    /// <summary>What is still needed of every row when so much is made; less than nothing where that is too much of a part.</summary>
    public long[] StillNeeded(long[] made)
    {
        var need = Rows.Select(row => row.Needed - made[row.Index]).ToArray();
        foreach (var split in Splits)
        {
            split.ShareOut(made, need);
        }

        return need;
    }

    /// <summary>The least part of its worth that a board on offer costs, at most 1.</summary>
    public double PriceByWorth => priceByWorth ??= Boards.Where(board => board.Price > 0)
        .Select(board => board.Price / Math.Max(board.Price, board.Profile.WorthOf(board.Along, board.Across))).DefaultIfEmpty(1).Min();

    private double? priceByWorth;

    /// <summary>
    /// Minor units that opening one more board counts in the second objective: handling it takes time, and more where others must be moved to get
    /// at it. A twentieth of what a board foot is worth, a quarter behind others, all of it for one that is buried (this project's judgement:
    /// nobody shifts a stack for less than a board foot of wood).
    /// </summary>
    public double HandlingOf(BoardType board) => !CountsHandling ? 0 : Problem.Rates.Otherwise.MinorUnits / board.Reach switch
    {
        Reach.Easy => 20.0,
        Reach.Behind => 4.0,
        Reach.Buried => 1.0,
    };

    /// <summary>Minor units that one more cut counts in the second objective.</summary>
    public double HandlingPerCut => !CountsHandling ? 0 : Problem.Rates.Otherwise.MinorUnits / 100.0;

    /// <summary>Minor units that a board cut as in the earlier plan counts less in the second objective: a maker may have marked it out already.</summary>
    public double KeepingPerBoard => Problem.Rates.Otherwise.MinorUnits / 4.0;
}
