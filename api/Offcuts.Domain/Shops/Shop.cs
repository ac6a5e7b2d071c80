namespace Offcuts.Domain;

/// <summary>How one shop works: its unit, its machines and what milling takes. Every value has a default that the user may change.</summary>
public sealed record Shop
{
    /// <summary>The unit in which sizes are shown.</summary>
    public DisplayUnit Unit { get; init; } = DisplayUnit.Inch;

    /// <summary>The currency's ISO 4217 code.</summary>
    public string Currency { get; init; } = "USD";

    /// <summary>Width of the saw's cut. Default 1/8 in, a full-kerf table saw blade (common practice).</summary>
    public Length Kerf { get; init; } = Length.FromInches(0, 1, 8);

    /// <summary>
    /// What rough stock loses on the way to a finished part. Defaults: 1/2 in of length and 1/4 in of width (a published
    /// furniture textbook), 3/16 in of thickness for two faces (NHLA rough to surfaced sizes up to 6/4).
    /// </summary>
    public Allowances Rough { get; init; } = new(Length.FromInches(0, 1, 2), Length.FromInches(0, 1, 4), Length.FromInches(0, 3, 16));

    /// <summary>
    /// What surfaced stock loses. Defaults: 1/2 in of length, 1/8 in of width; 1/16 in of thickness, but nothing where the
    /// board already has the part's thickness (common practice).
    /// </summary>
    public Allowances Surfaced { get; init; } = new(Length.FromInches(0, 1, 2), Length.FromInches(0, 1, 8), Length.FromInches(0, 1, 16));

    /// <summary>
    /// What skip-planed stock loses. Defaults between the two: the edges are as sawn, so 1/2 in of length and 1/4 in of width as for rough
    /// stock; 1/8 in of thickness, because the mill's light pass already took about 1/16 in of the 3/16 in (4/4 comes as 15/16 in; common practice).
    /// </summary>
    public Allowances SkipPlaned { get; init; } = new(Length.FromInches(0, 1, 2), Length.FromInches(0, 1, 4), Length.FromInches(0, 1, 8));

    /// <summary>
    /// How much bow, cup and twist together a blank of surfaced stock that is already at its thickness may keep: clamps and the joints of the
    /// assembly pull that straight. Default 1/32 in (common practice). Stock that is milled is always made quite flat.
    /// </summary>
    public Length FlatEnough { get; init; } = Length.FromInches(0, 1, 32);

    /// <summary>
    /// What comes off an end of solid wood that is checked, the cut included. Default none, so that nothing is lost unless the shop says so;
    /// many makers take 1 to 2 in (common practice): cut until an offcut no longer snaps along a check.
    /// </summary>
    public Length EndTrimChecked { get; init; } = Length.Zero;

    /// <summary>
    /// What comes off an end that nobody looked at, of rough or skip-planed stock, the cut included. Default none; 1/2 to 1 in is common practice.
    /// </summary>
    public Length EndTrimUnknown { get; init; } = Length.Zero;

    /// <summary>
    /// What comes off every edge of a sheet, the cut included: factory edges are often bruised or out of square. Default none; 1/4 to 1/2 in
    /// is common practice.
    /// </summary>
    public Length FactoryEdgeTrim { get; init; } = Length.Zero;

    /// <summary>
    /// By how much smaller than written a plan counts a side that was only estimated. Defaults: 1 in of length, 1/4 in of width, 1/16 in of
    /// thickness (this project's judgement: what a practised eye misses by, at most).
    /// </summary>
    public Allowances EstimateMargin { get; init; } = new(Length.FromInches(1), Length.FromInches(0, 1, 4), Length.FromInches(0, 1, 16));

    /// <summary>What a part cut from a sheet loses in length and width. Default none: sheets are cut to size. The thickness is never changed.</summary>
    public Allowances Sheet { get; init; } = new(Length.Zero, Length.Zero, Length.Zero);

    /// <summary>By how much a panel is glued up wider than finished, trimmed off afterwards. Default 1/4 in (common practice).</summary>
    public Length PanelOversize { get; init; } = Length.FromInches(0, 1, 4);

    /// <summary>What jointing the last seam between two surfaced sub-panels takes. Default 1/8 in (common practice).</summary>
    public Length SeamAllowance { get; init; } = Length.FromInches(0, 1, 8);

    /// <summary>The widest piece the planer takes. Default 12 in.</summary>
    public Length PlanerWidth { get; init; } = Length.FromInches(12);

    /// <summary>The widest rough piece the jointer can flatten. Default 8 in; with a planer sled set it to the planer's width.</summary>
    public Length JointerWidth { get; init; } = Length.FromInches(8);

    /// <summary>The narrowest strip to glue up, where a panel does not say. Default 1 1/2 in.</summary>
    public Length NarrowestStrip { get; init; } = Length.FromInches(1, 1, 2);

    /// <summary>The widest strip to glue up, where a panel does not say. Default 6 in (makers disagree: 3 to 8 in).</summary>
    public Length WidestStrip { get; init; } = Length.FromInches(6);

    /// <summary>
    /// The smallest leftover worth keeping. Default 12 in long, 2 in wide and 1/4 in thick (thin panel stock is kept too): no
    /// consensus exists, users set their own.
    /// </summary>
    public Dimensions Keep { get; init; } = new(Length.FromInches(0, 1, 4), Length.FromInches(2), Length.FromInches(12));

    /// <summary>The maker's own rule of what is kept, with concrete species; where it does not decide, <see cref="Keep"/> does. Default: no rule.</summary>
    public KeepRule KeepRule { get; init; } = KeepRule.None;

    /// <summary>The sizes that are kept of a species.</summary>
    /// <param name="species">Species id.</param>
    public KeepSizes KeptOf(string species) => KeepSizes.Of(KeepRule, Keep, species);

    /// <summary>The shortest piece that is safe at the planer. Default 12 in; the machine's manual decides.</summary>
    public Length ShortestAtPlaner { get; init; } = Length.FromInches(12);

    /// <summary>The shortest piece that is safe at the jointer. Default 12 in; the machine's manual decides.</summary>
    public Length ShortestAtJointer { get; init; } = Length.FromInches(12);

    /// <summary>
    /// What to do about blanks that are shorter than is safe at the machines that they must pass. Default: warn.
    /// </summary>
    public ShortBlanks ShortBlanks { get; init; } = ShortBlanks.Warn;

    /// <summary>The widest blank that the resaw takes on edge; null (the default) if the shop does not resaw.</summary>
    public Length? ResawHeight { get; init; }

    /// <summary>Width of the resaw's cut. Default 1/16 in, a resaw blade of a workshop's bandsaw and its set (common practice).</summary>
    public Length ResawKerf { get; init; } = Length.FromInches(0, 1, 16);

    /// <summary>
    /// What a resawn slice is sawn thicker than finished, for the saw's drift, the warp that the sawing sets free and planing the sawn
    /// faces. Default 1/8 in (common practice).
    /// </summary>
    public Length ResawCleanup { get; init; } = Length.FromInches(0, 1, 8);

    /// <summary>
    /// Whether a strip may be cut once more to hold several blanks (three cuts from board to blank instead of two).
    /// Default yes.
    /// </summary>
    public bool Recut { get; init; } = true;

    /// <summary>The finished width from which a solid panel's movement is warned of. Default 12 in (common practice).</summary>
    public Length WidePanel { get; init; } = Length.FromInches(12);

    /// <summary>The air in which what the shop builds will live.</summary>
    public Climate Climate { get; init; } = Climate.Default;

    /// <summary>For how many days a moisture reading counts. Default 180 (this project's judgement: by then the season has changed).</summary>
    public int ReadingDays { get; init; } = 180;

    /// <summary>
    /// What every supplier after the first must save to be worth the stop: it counts in the choice between plans as if it were spent. Default nothing.
    /// </summary>
    public Money SecondStop { get; init; }

    /// <summary>For how many days an accepted plan of which nothing is cut holds its boards; null (the default) for as long as nobody releases them.</summary>
    public int? HoldDays { get; init; }
}

/// <summary>What milling takes away, in total over both ends, edges or faces.</summary>
/// <param name="Length">Added to the length.</param>
/// <param name="Width">Added to the width.</param>
/// <param name="Thickness">Added to the thickness.</param>
public readonly record struct Allowances(Length Length, Length Width, Length Thickness);

/// <summary>What a shop does about blanks that are too short for a machine.</summary>
public enum ShortBlanks
{
    /// <summary>They are planned without a warning; the maker mills them in a safe way of their own.</summary>
    Allow,

    /// <summary>They are planned where that saves wood, with a warning.</summary>
    Warn,

    /// <summary>Short pieces are only planned as longer blanks that are cut to length after milling.</summary>
    Refuse,
}

/// <summary>The unit in which a shop reads sizes.</summary>
public enum DisplayUnit
{
    /// <summary>Inches and fractions.</summary>
    Inch,

    /// <summary>Millimetres.</summary>
    Millimetre,
}
