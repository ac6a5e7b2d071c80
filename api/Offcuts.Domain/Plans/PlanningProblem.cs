namespace Offcuts.Domain;

/// <summary>Everything that a plan is made from. The planner and the auditor see nothing else.</summary>
public sealed record PlanningProblem
{
    /// <summary>The boards that may be cut: only free ones.</summary>
    public required IReadOnlyList<Board> Stock { get; init; }

    /// <summary>What can be bought.</summary>
    public IReadOnlyList<Offer> Offers { get; init; } = [];

    /// <summary>What suppliers ask beyond their prices; a supplier that is not named asks nothing.</summary>
    public IReadOnlyList<SupplierTerms> Terms { get; init; } = [];

    /// <summary>What is to be built; every part and panel names concrete species ids (see <see cref="DesignResolver"/>).</summary>
    public required Design Design { get; init; }

    /// <summary>The builds of a joint design (<see cref="JointDesign"/>), the most important first; empty where there is only one.</summary>
    public IReadOnlyList<string> Builds { get; init; } = [];

    /// <summary>How the shop works.</summary>
    public required Shop Shop { get; init; }

    /// <summary>What wood is worth to the shop.</summary>
    public WorthRates Rates { get; init; } = WorthRates.Default;

    /// <summary>How hard it is to get at the boards of a place, by its name; a place that is not here is easy.</summary>
    public IReadOnlyDictionary<string, Reach> Reaches { get; init; } = new Dictionary<string, Reach>();

    /// <summary>The day on which the plan is made, for the age of boards.</summary>
    public DateOnly Today { get; init; }

    /// <summary>The plan to start from; null to plan from nothing. It never makes a plan dearer.</summary>
    public EarlierPlan? Earlier { get; init; }

    /// <summary>How hard it is to get at a board.</summary>
    public Reach ReachOf(Board board) => board.Place is { } place ? Reaches.GetValueOrDefault(place) : Reach.Easy;
}

/// <summary>What a board foot is worth, before the size of the piece is taken into account.</summary>
/// <param name="Otherwise">Minor units a board foot for species that have no rate of their own.</param>
/// <param name="PerBoardFoot">Minor units a board foot by species id.</param>
public sealed record WorthRates(Money Otherwise, IReadOnlyDictionary<string, Money> PerBoardFoot)
{
    /// <summary>6.00 a board foot for everything.</summary>
    public static WorthRates Default { get; } = new(new Money(600), new Dictionary<string, Money>());

    /// <summary>The rate of a species.</summary>
    public Money Of(string species) => PerBoardFoot.TryGetValue(species, out var rate) ? rate : Otherwise;
}

/// <summary>How long and how the planner searches.</summary>
/// <param name="Budget">Time after which the best plan so far is returned.</param>
/// <param name="Seed">Seed of every random choice.</param>
public sealed record PlanLimits(TimeSpan Budget, int Seed = 1)
{
    /// <summary>Five seconds, seed 1.</summary>
    public static PlanLimits Default { get; } = new(TimeSpan.FromSeconds(5));

    /// <summary>When the search ends by itself.</summary>
    public PlanEffort Effort { get; init; }

    /// <summary>Whether a thorough search also bounds the worth that a plan uses up (<see cref="Plan.WorthBound"/>), for at most a part of the time that is left.</summary>
    public bool BoundsWorth { get; init; }
}

/// <summary>When a search ends by itself, apart from its budget.</summary>
public enum PlanEffort
{
    /// <summary>When nothing better is found any more: for a plan that is to be built.</summary>
    Thorough,

    /// <summary>
    /// As <see cref="Quick"/>, then with care for which boards are cut where nothing is bought: a linear program of few rounds and one dive
    /// through it. What such a plan takes of the pile is within a few parts in a hundred of what a thorough search comes to.
    /// </summary>
    Settled,

    /// <summary>
    /// With the first plan where that buys nothing; else with the linear program's bound and the plans of two dives. Enough to tell what a design costs
    /// beside others, without care for which of the shop's own boards are cut.
    /// </summary>
    Quick,

    /// <summary>With the first plan; whatever that leaves out is missing, though a search might find a place for it.</summary>
    Glance,
}
