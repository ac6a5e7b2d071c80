namespace Offcuts.Storage;

/// <summary>A row of <c>plan_runs</c>.</summary>
internal sealed class PlanRow
{
    public const string Columns = """
        sequence, id, state, requested_at AS RequestedAt, finished_at AS FinishedAt, design_name AS DesignName,
        design_version AS DesignVersion, design_reference AS DesignReference, budget_ms AS BudgetMs, seed, owner, problem,
        earlier_id AS EarlierId, made_with AS MadeWith, designs, purpose,
        progress, failure, plan
        """;

    public long Sequence { get; init; }

    public string Id { get; init; } = "";

    public string State { get; init; } = "";

    public string RequestedAt { get; init; } = "";

    public string? FinishedAt { get; init; }

    public string DesignName { get; init; } = "";

    public string DesignVersion { get; init; } = "";

    public string? DesignReference { get; init; }

    public int BudgetMs { get; init; }

    public int Seed { get; init; }

    public string Owner { get; init; } = "";

    public string Problem { get; init; } = "";

    public string? EarlierId { get; init; }

    public string? MadeWith { get; init; }

    public string? Designs { get; init; }

    public string Purpose { get; init; } = "";

    public string? Progress { get; init; }

    public string? Failure { get; init; }

    public string? Plan { get; init; }

    public StoredPlanRun ToRun() => new(
        new(Id, DesignName, DesignVersion, DesignReference, BudgetMs, Seed, Owner, Problem, EarlierId, MadeWith, Designs, Words.Read<PlanPurpose>(Purpose)),
        Words.Read<PlanState>(State),
        Stamp.Read(RequestedAt),
        FinishedAt is null ? null : Stamp.Read(FinishedAt),
        Progress,
        Failure,
        Plan);
}
