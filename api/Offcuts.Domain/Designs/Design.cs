namespace Offcuts.Domain;

/// <summary>One piece of furniture as its maker wrote it down: finished sizes, never rough ones.</summary>
public sealed record Design
{
    /// <summary>The name a person calls it by.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public string? Description { get; init; }

    /// <summary>Words of the maker's own to find it by; no two alike whatever their case.</summary>
    public IReadOnlyList<string> Tags { get; init; } = [];

    /// <summary>How many hours of work its maker reckons with; null if that is not said. Above zero.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Parts made of one piece each.</summary>
    public IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>Edge-glued panels.</summary>
    public IReadOnlyList<Panel> Panels { get; init; } = [];

    /// <summary>Finish groups that parts and panels name.</summary>
    public IReadOnlyList<FinishGroup> Groups { get; init; } = [];

    /// <summary>What is bought ready made.</summary>
    public IReadOnlyList<BoughtItem> Items { get; init; } = [];

    /// <summary>What all of that costs; what suppliers charge beyond it not counted.</summary>
    public Money ItemCost => new(Items.Sum(item => item.Cost.MinorUnits));

    /// <summary>The lengths and counts that it leaves open within limits.</summary>
    public IReadOnlyList<Parameter> Parameters { get; init; } = [];

    /// <summary>Values that follow from the parameters.</summary>
    public IReadOnlyList<DerivedValue> Derived { get; init; } = [];

    /// <summary>The unit of bare numbers in its formulas.</summary>
    public DisplayUnit FormulaUnit { get; init; } = DisplayUnit.Millimetre;

    /// <summary>The ways of building it among which there is to choose.</summary>
    public IReadOnlyList<Choice> Choices { get; init; } = [];

    /// <summary>Whether sizes or quantities follow by formulas: then a plan needs them settled first (<see cref="DesignInstance.At"/>).</summary>
    public bool Bends => Parameters.Count + Derived.Count > 0 || Parts.Any(part => part.Freedom.Formulas.Count > 0)
        || Panels.Any(panel => panel.Freedom.Formulas.Count > 0) || Items.Any(item => item.Freedom.Formulas.Count > 0);

    /// <summary>Whether there is more than one way to build it: then a plan needs one of them (<see cref="Alternatives.Of"/>).</summary>
    public bool HasAlternatives => Choices.Count > 0 || Groups.Any(group => group.SpeciesInOrder)
        || Parts.Any(part => part.Freedom.SpeciesInOrder) || Panels.Any(panel => panel.Freedom.SpeciesInOrder);
}

/// <summary>A part that is cut as one piece.</summary>
public sealed record Part
{
    /// <summary>Name, unique among the parts and panels of the design.</summary>
    public required string Name { get; init; }

    /// <summary>How many; at least 1. Where more will do (<see cref="MostQuantity"/>), the fewest.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>The most that will do: beyond <see cref="Quantity"/> as many are made as cost nothing. Null: exactly <see cref="Quantity"/>.</summary>
    public int? MostQuantity { get; init; }

    /// <summary>How the pieces share a span side by side, so that the plan can say the gaps; null if they do not.</summary>
    public Spacing? Spacing { get; init; }

    /// <summary>How many extra blanks to cut, for a test or a mistake, if they cost nothing.</summary>
    public int Spares { get; init; }

    /// <summary>What more pieces and spares may be cut from; null: more pieces from waste, spares from leftovers too.</summary>
    public ExtraSource? Extras { get; init; }

    /// <summary>Whether the plan must say how many there are in the end: more may be made, spares are asked for, or gaps follow.</summary>
    public bool HasCount => MostQuantity is not null || Spacing is not null || Spares > 0;

    /// <summary>Whether extra pieces may be cut from leftovers that would go back to the rack.</summary>
    /// <param name="use">More pieces or spares.</param>
    public bool MayUseLeftovers(PieceUse use) => Extras is { } given ? given == ExtraSource.Leftovers : use == PieceUse.Spare;

    /// <summary>Finished size; where there are tolerances (<see cref="Most"/>), the least.</summary>
    public required Dimensions Finished { get; init; }

    /// <summary>The largest finished size that will do as well, no side below <see cref="Finished"/>; null if only exactly that size will.</summary>
    public Dimensions? Most { get; init; }

    /// <summary>Whether any side may be larger than <see cref="Finished"/>.</summary>
    public bool HasTolerance => Most is { } most && most != Finished;

    /// <summary>The largest thickness that will do.</summary>
    public Length MostThickness => (Most ?? Finished).Thickness;

    /// <summary>Species ids or species classes that are accepted; empty means what the group says.</summary>
    public IReadOnlyList<string> Species { get; init; } = [];

    /// <summary>The least appearance accepted.</summary>
    public Appearance Appearance { get; init; } = Appearance.SoundKnots;

    /// <summary>Whether the grain must run along the part's length.</summary>
    public Grain Grain { get; init; } = Grain.Fixed;

    /// <summary>
    /// Kinds of defects that the part may contain, because its face is hidden or painted (see <see cref="DefectKinds"/>); empty for none.
    /// </summary>
    public IReadOnlyList<string> Tolerates { get; init; } = [];

    /// <summary>The finish group, if it belongs to one.</summary>
    public string? Group { get; init; }

    /// <summary>
    /// Of how many layers of equal thickness it may be face-glued at most; 1 for a part that must be in one piece. A part that may be
    /// laminated is of one species throughout, and all its laminated copies have the same number of layers.
    /// </summary>
    public int Layers { get; init; } = 1;

    /// <summary>What of it follows by formulas or depends on choices.</summary>
    public MemberFreedom Freedom { get; init; } = MemberFreedom.None;
}

/// <summary>A solid panel glued up from strips whose widths are free within limits.</summary>
public sealed record Panel
{
    /// <summary>Name, unique among the parts and panels of the design.</summary>
    public required string Name { get; init; }

    /// <summary>How many; at least 1.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>Finished size; the grain runs along the length.</summary>
    public required Dimensions Finished { get; init; }

    /// <summary>The narrowest strip, as it stands in the glued-up panel; null for the shop's.</summary>
    public Length? NarrowestStrip { get; init; }

    /// <summary>The widest strip, as it stands in the glued-up panel; null for the shop's.</summary>
    public Length? WidestStrip { get; init; }

    /// <summary>Species ids or species classes that are accepted; empty means what the group says. One panel is always of one species.</summary>
    public IReadOnlyList<string> Species { get; init; } = [];

    /// <summary>The least appearance accepted.</summary>
    public Appearance Appearance { get; init; } = Appearance.SoundKnots;

    /// <summary>Kinds of defects that its strips may contain, because its faces are hidden or painted (see <see cref="DefectKinds"/>); empty for none.</summary>
    public IReadOnlyList<string> Tolerates { get; init; } = [];

    /// <summary>The finish group, if it belongs to one.</summary>
    public string? Group { get; init; }

    /// <summary>What of it follows by formulas or depends on choices.</summary>
    public MemberFreedom Freedom { get; init; } = MemberFreedom.None;
}

/// <summary>Parts and panels that are finished alike.</summary>
/// <param name="Name">Name, unique in the design.</param>
/// <param name="OneSpecies">Whether all of the group must be of one species.</param>
/// <param name="Species">Species ids or classes accepted by members that name none themselves.</param>
public sealed record FinishGroup(string Name, bool OneSpecies, IReadOnlyList<string> Species)
{
    /// <summary>Whether the wood of the group should come from one batch: the same tree or the same lot matches in colour and figure.</summary>
    public BatchChoice Batch { get; init; }

    /// <summary>Whether an earlier species of its list is preferred to a later one where the money is equal.</summary>
    public bool SpeciesInOrder { get; init; }
}

/// <summary>What a finish group asks of the batches of its boards.</summary>
public enum BatchChoice
{
    /// <summary>It does not matter.</summary>
    Any,

    /// <summary>One batch if the wood costs no more for it.</summary>
    Fewest,

    /// <summary>One batch, and so one species. A board without a batch will not do; all that is bought of one offer counts as one batch.</summary>
    One,
}

/// <summary>Something bought ready made: hardware, turned legs, finish.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="UnitPrice">Price of one.</param>
/// <param name="Supplier">Where to buy it, if it matters.</param>
public sealed record BoughtItem(string Name, int Quantity, Money UnitPrice, string? Supplier = null)
{
    /// <summary>What of it follows by formulas or depends on choices.</summary>
    public MemberFreedom Freedom { get; init; } = MemberFreedom.None;

    /// <summary>Price of all of them.</summary>
    public Money Cost => UnitPrice * Quantity;
}

/// <summary>Pieces side by side across a span, such as slats between two posts, with equal gaps.</summary>
/// <param name="Span">What pieces and gaps fill together.</param>
/// <param name="Ends">Whether there are gaps at both ends too; else the first and last piece stand at the ends.</param>
public sealed record Spacing(Length Span, bool Ends)
{
    /// <summary>The gaps that so many pieces leave: one more than pieces with gaps at the ends, else one fewer.</summary>
    public int Gaps(int pieces) => Ends ? pieces + 1 : pieces - 1;
}

/// <summary>What extra pieces may be cut from; never from a board that is bought or opened for them.</summary>
public enum ExtraSource
{
    /// <summary>Only from what would be thrown away.</summary>
    Waste,

    /// <summary>From waste first, then from leftovers that would go back to the rack.</summary>
    Leftovers,
}

/// <summary>Which way a part may lie on a board.</summary>
public enum Grain
{
    /// <summary>The grain runs along the part's length.</summary>
    Fixed,

    /// <summary>The part may be turned a quarter.</summary>
    Free,
}
