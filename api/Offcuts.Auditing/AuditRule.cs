namespace Offcuts.Auditing;

/// <summary>The rules that every plan keeps; the numbers are those of the cutting rules in DEVELOPERS.md.</summary>
public enum AuditRule
{
    /// <summary>Nothing is null or out of range. If this is broken, no other rule is looked at.</summary>
    WellFormed,

    /// <summary>Boards are numbered from 1 in order.</summary>
    Numbering,

    /// <summary>Each board is a free one in stock or a size of an offer, with the size, kind, species, surface and defects that this has.</summary>
    BoardIdentity,

    /// <summary>Rule 8: no board is used more often than its quantity, no offer more often than it is available; copies have their own numbers.</summary>
    Supply,

    /// <summary>Every piece and every saw cut lies on its board.</summary>
    OnBoard,

    /// <summary>No two pieces or saw cuts of a board overlap.</summary>
    Overlap,

    /// <summary>Rule 7: pieces and kerfs cover the board exactly.</summary>
    Coverage,

    /// <summary>Rule 5: the cuts, made in order, go right through the piece that each divides, are a kerf wide, and leave the pieces listed.</summary>
    SawCuts,

    /// <summary>Rule 5: blanks are separated by at most three turns of cutting direction (two without <c>Recut</c>), then trimmed; on a board with defects in each area that cuts along them free.</summary>
    Stages,

    /// <summary>Rule 2: a blank is the finished part and its allowances, turned only if the grain is free.</summary>
    BlankSize,

    /// <summary>Rule 2: a part with tolerances is planned at a size within them that its board can give, any other at its one size.</summary>
    FinishedSize,

    /// <summary>Rule 1: the board is thick enough to mill, or exactly as thick where it is not milled; a panel is of solid wood (rule 3).</summary>
    Thickness,

    /// <summary>Rule 1: the blank is no wider than the machines that it must pass.</summary>
    MachineWidth,

    /// <summary>Rule 1: the part accepts the board's species.</summary>
    Species,

    /// <summary>Rule 1: the board looks at least as good as the part asks for.</summary>
    Appearance,

    /// <summary>Rule 6: no blank or strip lies over a defect that its part or panel does not tolerate, no kept leftover over any.</summary>
    Defects,

    /// <summary>Rule 6: no blank, strip or kept leftover lies in an end or edge that is trimmed off.</summary>
    EndTrim,

    /// <summary>Rule 7: a leftover's end is sound where it was sawn, else as the board's own end was.</summary>
    LeftoverEnds,

    /// <summary>Rule 1: what a blank or strip is said to lose to warp is what flattening and straightening it takes.</summary>
    Loss,

    /// <summary>Rule 3: a strip is as long as the panel and its allowance, within the strip limits, and counted for its sawn width less the allowance.</summary>
    StripSize,

    /// <summary>Rule 3: a panel has the right number of sub-panels, no wider than the planer takes, that add up to the panel, and the strips of each add up to its width.</summary>
    SubPanels,

    /// <summary>Rule 3: the glue-up lists and the strips on the boards are the same, one to one.</summary>
    GlueUps,

    /// <summary>Rules 13 to 15: a blank holds as many pieces as its length and its thickness give, by a recipe that the shop and the part allow.</summary>
    Recipe,

    /// <summary>Rule 15: the layers of each face-glued copy are complete, and the lists and the layers on the boards are the same, one to one.</summary>
    Laminations,

    /// <summary>Rule 15: a part that may be laminated is of one species, and its laminated copies are of equally many layers.</summary>
    LaminatedPart,

    /// <summary>Rule 13: where the shop refuses short blanks, none is shorter than is safe at the machines that it must pass.</summary>
    ShortBlank,

    /// <summary>Rule 3: all panels of one name are of one species.</summary>
    PanelSpecies,

    /// <summary>Rule 4: a finish group that asks for one species gets one.</summary>
    FinishGroup,

    /// <summary>Rule 4: a finish group that asks for one batch gets one, and so one species.</summary>
    Batch,

    /// <summary>Rule 9: every part and panel is made as often as asked, less what is missing, each copy once.</summary>
    Demand,

    /// <summary>Rule 12: extra pieces are no more than the design can use and cost nothing.</summary>
    Extras,

    /// <summary>Rule 12: the plan counts pieces, spares and gaps as they are.</summary>
    Counts,

    /// <summary>A reason given for a missing part holds for every board and every offer.</summary>
    MissingReason,

    /// <summary>Rule 7: what is kept is of the keep size, and nothing of the keep size is thrown away.</summary>
    Leftovers,

    /// <summary>Rule 16: what suppliers charge and further stops count is what the terms say of the orders.</summary>
    Charges,

    /// <summary>The purchases are exactly the bought boards at the prices that their quantities reach.</summary>
    Purchases,

    /// <summary>Rule 10: costs and worths add up.</summary>
    Totals,

    /// <summary>Rule 10: the bound is neither negative nor above the outlay.</summary>
    Bound,

    /// <summary>Rule 10: proved exactly if nothing is missing and the bound equals the outlay; incomplete exactly if something is missing.</summary>
    Status,
}
