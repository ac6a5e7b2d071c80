namespace Offcuts.Contracts;

/// <summary>A planning run and, once there is one, its plan. Every plan has passed the auditor.</summary>
/// <param name="Id">Id of the run.</param>
/// <param name="State"><c>queued</c>, <c>planning</c>, <c>done</c>, <c>cancelled</c>, <c>failed</c> or <c>interrupted</c>; it only moves forward.</param>
/// <param name="RequestedAt">When it was asked for (UTC).</param>
/// <param name="FinishedAt">When it ended (UTC); null before.</param>
/// <param name="Design">The design as it was.</param>
/// <param name="BudgetMs">Time allowed in milliseconds.</param>
/// <param name="Seed">Seed of the random choices.</param>
/// <param name="Progress">How far the search is; null before it began.</param>
/// <param name="Failure">Why there is no plan; null unless failed.</param>
/// <param name="Plan">The plan: the best so far while planning, the last once done or cancelled; null before the first.</param>
/// <param name="Build">How far its build is; null for a plan that is not accepted.</param>
/// <param name="From">Id of the plan that it starts from; null for none.</param>
/// <param name="MadeWith">Which of all that the design leaves open it was made with; null for a design that leaves nothing.</param>
/// <param name="Purpose"><c>build</c>, or <c>what-if</c> for a plan that only tells what would be.</param>
public sealed record PlanRecord(
    string Id,
    string State,
    DateTimeOffset RequestedAt,
    DateTimeOffset? FinishedAt,
    PlanDesign Design,
    int BudgetMs,
    int Seed,
    PlanProgressRecord? Progress,
    PlanFailure? Failure,
    PlanResult? Plan,
    BuildRecord? Build = null,
    string? From = null,
    MadeWithRecord? MadeWith = null,
    string Purpose = "build");

/// <summary>What a plan was made with, where its design leaves something open.</summary>
/// <param name="LengthsMm">Lengths in millimetres, parameters and what follows from them, by their names.</param>
/// <param name="Numbers">Counts and other numbers by their names; what is no decimal number is rounded to six decimals.</param>
/// <param name="Choices">The answers to choices by their names; without those that are still to be found.</param>
/// <param name="Compared">How the answers that were not asked for were found; null if all were asked for, or until it is known.</param>
public sealed record MadeWithRecord(
    IReadOnlyDictionary<string, decimal> LengthsMm,
    IReadOnlyDictionary<string, decimal> Numbers,
    IReadOnlyDictionary<string, string> Choices,
    ComparisonRecord? Compared = null);

/// <summary>How several ways to build a design compared.</summary>
/// <param name="Ways">How many there were.</param>
/// <param name="Sure">Whether none of the others can cost less than the one that was planned.</param>
public sealed record ComparisonRecord(int Ways, bool Sure);

/// <summary>Which design a plan is for.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Version">Id of its content.</param>
/// <param name="Reference">Reference of the stored design; null for an inline one.</param>
public sealed record PlanDesign(string Name, string Version, string? Reference);

/// <summary>How far a search is. Money is in the shop's currency.</summary>
/// <param name="ElapsedMs">Time since it began, in milliseconds.</param>
/// <param name="WoodCost">Cost of the wood of the best plan so far, with suppliers' charges and further stops where there are any; null before the first.</param>
/// <param name="WoodBound">No plan costs less than this, as far as known.</param>
/// <param name="Gap">(cost - bound) / cost; null before the first plan.</param>
public sealed record PlanProgressRecord(int ElapsedMs, decimal? WoodCost, decimal WoodBound, decimal? Gap);

/// <summary>Why a run failed.</summary>
/// <param name="Type">Path of the page that documents this kind of problem.</param>
/// <param name="Code">The last word of the type.</param>
/// <param name="Detail">What happened.</param>
/// <param name="Reproduction">Name of the file in the service's data folder that holds what is needed to look into it.</param>
public sealed record PlanFailure(string Type, string Code, string Detail, string? Reproduction);

/// <summary>A run in the list of them.</summary>
/// <param name="Id">Id of the run.</param>
/// <param name="State">See <see cref="PlanRecord"/>.</param>
/// <param name="RequestedAt">When it was asked for (UTC).</param>
/// <param name="Design">The design as it was.</param>
/// <param name="Status"><c>proved</c>, <c>feasible</c> or <c>incomplete</c>; null while there is no plan.</param>
/// <param name="Currency">ISO 4217 code of the cost; null while there is no plan.</param>
/// <param name="TotalCost">All money; null while there is no plan.</param>
/// <param name="Gap">How far the wood may be above the best possible; null while there is no plan.</param>
/// <param name="Build"><c>accepted</c>, <c>under-way</c>, <c>built</c> or <c>stopped</c>; null for a plan that is not accepted.</param>
/// <param name="Purpose">See <see cref="PlanRecord"/>.</param>
public sealed record PlanSummary(
    string Id,
    string State,
    DateTimeOffset RequestedAt,
    PlanDesign Design,
    string? Status,
    string? Currency,
    decimal? TotalCost,
    decimal? Gap,
    string? Build = null,
    string Purpose = "build");

/// <summary>One page of runs.</summary>
/// <param name="Items">The runs, newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record PlanPage(IReadOnlyList<PlanSummary> Items, string? Next);
