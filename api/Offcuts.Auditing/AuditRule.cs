namespace Offcuts.Auditing;

/// <summary>The rules that every plan keeps; numbers refer to the cutting rules in the contributor's guide.</summary>
public enum AuditRule
{
    /// <summary>Every piece and every kerf lies on its board (5).</summary>
    OnBoard,

    /// <summary>No two pieces overlap (5).</summary>
    Overlap,

    /// <summary>Two pieces side by side have a kerf between them (5).</summary>
    Kerf,

    /// <summary>The listed cuts, made in order, each go right through the piece that they divide, and leave exactly the listed pieces (5, 7).</summary>
    Guillotine,

    /// <summary>No piece takes more changes of cutting direction than the shop allows: three with recutting, two without, and one more to trim; boards with defects need more (5).</summary>
    Stages,

    /// <summary>A board is the one that it is said to be: it is in stock and free, or on offer in that size (8).</summary>
    BoardIdentity,

    /// <summary>No board is used more often than it is there, no offer more often than it is available (8).</summary>
    OverUse,

    /// <summary>Boards are numbered from 1 in order.</summary>
    Numbering,

    /// <summary>A part's piece is of an accepted species and good enough (1).</summary>
    Species,

    /// <summary>A piece looks at least as good as asked (1).</summary>
    Appearance,

    /// <summary>A board's thickness suits the part's (1).</summary>
    Thickness,

    /// <summary>A blank is no wider than the machines take (1).</summary>
    MachineWidth,

    /// <summary>A blank has the part's size with its allowances, and is turned only if its grain is free (2).</summary>
    BlankSize,

    /// <summary>Strips keep their limits, count for what jointing leaves, and add up to their sub-panel (3).</summary>
    Strips,

    /// <summary>The glue-up lists name exactly the strips that are cut (3).</summary>
    GlueUp,

    /// <summary>All panels of one name, and all of a group that asks for it, are of one species (3, 4).</summary>
    OneSpecies,

    /// <summary>No part, strip or kept leftover lies over a defect (6).</summary>
    Defect,

    /// <summary>Leftovers are large enough to keep, and nothing that is gets called waste (7).</summary>
    Leftover,

    /// <summary>Made and missing add up to what is asked, each copy once (9).</summary>
    Demand,

    /// <summary>What is missing is missing for the reason given (9).</summary>
    Missing,

    /// <summary>Purchases are the boards that are bought (10).</summary>
    Purchases,

    /// <summary>Money and worth add up (10).</summary>
    Totals,

    /// <summary>The bound is not above the cost, and the status says what is known (10).</summary>
    Proof,

    /// <summary>A size or sum is beyond all reason.</summary>
    Arithmetic,
}

/// <summary>One thing that is wrong with a plan.</summary>
/// <param name="Rule">The rule that is broken.</param>
/// <param name="Detail">Where and by how much.</param>
public sealed record AuditFinding(AuditRule Rule, string Detail);
