namespace Offcuts.Domain;

/// <summary>One piece of furniture as its maker wrote it down: finished sizes, never rough ones.</summary>
public sealed record Design
{
    /// <summary>The name a person calls it by.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public string? Description { get; init; }

    /// <summary>Parts made of one piece each.</summary>
    public IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>Edge-glued panels.</summary>
    public IReadOnlyList<Panel> Panels { get; init; } = [];

    /// <summary>Finish groups that parts and panels name.</summary>
    public IReadOnlyList<FinishGroup> Groups { get; init; } = [];

    /// <summary>What is bought ready made.</summary>
    public IReadOnlyList<BoughtItem> Items { get; init; } = [];
}

/// <summary>A part that is cut as one piece.</summary>
public sealed record Part
{
    /// <summary>Name, unique among the parts and panels of the design.</summary>
    public required string Name { get; init; }

    /// <summary>How many; at least 1.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>Finished size.</summary>
    public required Dimensions Finished { get; init; }

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
}

/// <summary>Parts and panels that are finished alike.</summary>
/// <param name="Name">Name, unique in the design.</param>
/// <param name="OneSpecies">Whether all of the group must be of one species.</param>
/// <param name="Species">Species ids or classes accepted by members that name none themselves.</param>
public sealed record FinishGroup(string Name, bool OneSpecies, IReadOnlyList<string> Species);

/// <summary>Something bought ready made: hardware, turned legs, finish.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="UnitPrice">Price of one.</param>
/// <param name="Supplier">Where to buy it, if it matters.</param>
public sealed record BoughtItem(string Name, int Quantity, Money UnitPrice, string? Supplier = null);

/// <summary>Which way a part may lie on a board.</summary>
public enum Grain
{
    /// <summary>The grain runs along the part's length.</summary>
    Fixed,

    /// <summary>The part may be turned a quarter.</summary>
    Free,
}
