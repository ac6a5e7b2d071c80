namespace Offcuts.Contracts;

/// <summary>Which value of a design's parameter stays within the money. Give <paramref name="Design"/>, or a design in <paramref name="Inline"/>.</summary>
/// <param name="Parameter">Name of the parameter.</param>
/// <param name="Design">Reference or version id of a stored design.</param>
/// <param name="Inline">What is to be used instead of what is stored.</param>
/// <param name="Goal"><c>largest</c>, <c>smallest</c>, or <c>nearest</c> to <paramref name="Wish"/>.</param>
/// <param name="Wish">The value wished for, millimetres of a length or a count; only with <c>nearest</c>.</param>
/// <param name="Spend">The most to spend on wood and items together, in the shop's currency; delivery and minimum orders included; null if no wood may be bought, whatever the items cost and their suppliers charge.</param>
/// <param name="With">Values of the other parameters by their names; those left out have their defaults.</param>
/// <param name="Choose">Answers to the design's choices by their names; of those left out any answer will do.</param>
/// <param name="BudgetMs">Time allowed in milliseconds, 100 to 20000.</param>
/// <param name="Seed">Seed of every random choice, 0 or more.</param>
public sealed record StretchRequest(
    string Parameter,
    string? Design = null,
    InlineProblem? Inline = null,
    string Goal = "largest",
    decimal? Wish = null,
    decimal? Spend = null,
    IReadOnlyDictionary<string, decimal>? With = null,
    IReadOnlyDictionary<string, string>? Choose = null,
    int BudgetMs = 10_000,
    int Seed = 1);

/// <summary>How many copies of a design there is wood for. Give <paramref name="Design"/>, or a design in <paramref name="Inline"/>.</summary>
/// <param name="Design">Reference or version id of a stored design.</param>
/// <param name="Inline">What is to be used instead of what is stored.</param>
/// <param name="With">Values of its parameters by their names; those left out have their defaults.</param>
/// <param name="Choose">Answers to its choices by their names; of those left out any answer will do, the same for all copies.</param>
/// <param name="BudgetMs">Time allowed in milliseconds, 100 to 20000.</param>
/// <param name="Seed">Seed of every random choice, 0 or more.</param>
public sealed record FillRequest(
    string? Design = null,
    InlineProblem? Inline = null,
    IReadOnlyDictionary<string, decimal>? With = null,
    IReadOnlyDictionary<string, string>? Choose = null,
    int BudgetMs = 10_000,
    int Seed = 1);

/// <summary>The answer.</summary>
/// <param name="Design">The design as it was.</param>
/// <param name="Parameter">Name of the parameter; <c>copies</c> where that is what was sought.</param>
/// <param name="Currency">The currency of all money.</param>
/// <param name="Best">The best value that stays within the money; null if none is known to.</param>
/// <param name="Sure">Whether it is proved that no better value does; if there is no best, that none does.</param>
/// <param name="OpenValues">The better values of which it is not known, at most 20 of them, the best first: millimetres of a length or counts.</param>
/// <param name="OpenCount">How many these are in all.</param>
/// <param name="Neighbours">Values below and above the best, in ascending order, and what each costs.</param>
/// <param name="Values">How many values the parameter has.</param>
/// <param name="Tried">How many of them were looked at.</param>
/// <param name="ElapsedMs">How long it took.</param>
public sealed record StretchRecord(
    PlanDesign Design,
    string Parameter,
    string Currency,
    StretchedValueRecord? Best,
    bool Sure,
    IReadOnlyList<decimal> OpenValues,
    int OpenCount,
    IReadOnlyList<StretchedValueRecord> Neighbours,
    int Values,
    int Tried,
    int ElapsedMs);

/// <summary>A value of a parameter and what building with it costs.</summary>
/// <param name="LengthMm">The value, if it is a length.</param>
/// <param name="Count">The value, if it is a count.</param>
/// <param name="Verdict"><c>within</c> the money, <c>out</c> (proved), or <c>open</c>.</param>
/// <param name="WoodCost">What the wood of its plan costs, with suppliers' charges and further stops where there are any; null if nothing was planned.</param>
/// <param name="ItemCost">What its items cost; null likewise.</param>
/// <param name="CostAtLeast">No plan spends less: the wood, and with <c>spend</c> the items too; null where some part cannot be had at all.</param>
/// <param name="Missing">How many pieces its plan lacks; null if nothing was planned.</param>
/// <param name="Choices">The answers to choices that its plan has, by their names.</param>
public sealed record StretchedValueRecord(
    decimal? LengthMm, int? Count, string Verdict, decimal? WoodCost, decimal? ItemCost, decimal? CostAtLeast, int? Missing, IReadOnlyDictionary<string, string> Choices);

/// <summary>How far it is: the event <c>progress</c>.</summary>
/// <param name="Values">How many values there are.</param>
/// <param name="Tried">How many of them were looked at.</param>
/// <param name="LengthMm">The best so far that stays within the money, if the values are lengths; null before the first.</param>
/// <param name="Count">The same if they are counts.</param>
public sealed record StretchProgressRecord(int Values, int Tried, decimal? LengthMm, int? Count);
