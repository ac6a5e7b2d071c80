using Dapper;

namespace Offcuts.Storage;

/// <summary>How far a planning run is; it only moves forward.</summary>
public enum PlanState
{
    /// <summary>Waits for its turn.</summary>
    Queued,

    /// <summary>The search runs.</summary>
    Planning,

    /// <summary>Ended with a plan.</summary>
    Done,

    /// <summary>Ended early because it was asked to.</summary>
    Cancelled,

    /// <summary>Ended without a plan because of a fault of the product.</summary>
    Failed,

    /// <summary>The process that planned it ended.</summary>
    Interrupted,
}

/// <summary>What a plan is asked for.</summary>
public enum PlanPurpose
{
    /// <summary>To be built.</summary>
    Build,

    /// <summary>To know what would be. It becomes one to be built when it is accepted.</summary>
    WhatIf,
}

/// <summary>A planning run as it is asked for.</summary>
/// <param name="Id">Id.</param>
/// <param name="DesignName">Name of the design.</param>
/// <param name="DesignVersion">Hash of its content.</param>
/// <param name="DesignReference">Reference of the stored design, if it is one.</param>
/// <param name="BudgetMs">Time allowed in milliseconds.</param>
/// <param name="Seed">Seed.</param>
/// <param name="Owner">The process that will plan it.</param>
/// <param name="Problem">All that it is made from, as JSON.</param>
/// <param name="EarlierId">Id of the plan that it starts from; null for none.</param>
/// <param name="MadeWith">Which of all that the design leaves open it is made with, as JSON; null where that is nothing.</param>
/// <param name="Designs">References of the stored designs of a plan of several, as JSON; null for a plan of one.</param>
/// <param name="Purpose">What it is asked for.</param>
public sealed record NewPlanRun(
    string Id, string DesignName, string DesignVersion, string? DesignReference, int BudgetMs, int Seed, string Owner, string Problem, string? EarlierId = null,
    string? MadeWith = null, string? Designs = null, PlanPurpose Purpose = PlanPurpose.Build);

/// <summary>A planning run.</summary>
/// <param name="Asked">What was asked for.</param>
/// <param name="State">How far it is.</param>
/// <param name="RequestedAt">When it was asked for.</param>
/// <param name="FinishedAt">When it ended.</param>
/// <param name="Progress">How far the search is, as JSON.</param>
/// <param name="Failure">Why it failed, as JSON.</param>
/// <param name="Plan">The best audited plan so far, as JSON.</param>
public sealed record StoredPlanRun(
    NewPlanRun Asked, PlanState State, DateTimeOffset RequestedAt, DateTimeOffset? FinishedAt, string? Progress, string? Failure, string? Plan);

/// <summary>The planning runs.</summary>
/// <param name="database">Where they are kept.</param>
/// <param name="clock">Says when a run is asked for and ends.</param>
public sealed class PlanStore(Database database, TimeProvider clock)
{
    /// <summary>Keeps a new run, queued.</summary>
    public void Add(NewPlanRun run)
    {
        using var connection = database.Connect();
        connection.Execute(
            """
            INSERT INTO plan_runs (id, state, requested_at, design_name, design_version, design_reference, budget_ms, seed, owner, problem, earlier_id, made_with, designs, purpose)
            VALUES (@Id, 'queued', @Now, @DesignName, @DesignVersion, @DesignReference, @BudgetMs, @Seed, @Owner, @Problem, @EarlierId, @MadeWith, @Designs, @Purpose)
            """,
            new
            {
                run.Id,
                Now = Stamp.Of(clock.GetUtcNow()),
                run.DesignName,
                run.DesignVersion,
                run.DesignReference,
                run.BudgetMs,
                run.Seed,
                run.Owner,
                run.Problem,
                run.EarlierId,
                run.MadeWith,
                run.Designs,
                Purpose = Words.Of(run.Purpose),
            });
    }

    /// <summary>One run, or null.</summary>
    public StoredPlanRun? Find(string id)
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<PlanRow>($"SELECT {PlanRow.Columns} FROM plan_runs WHERE id = @Id", new { Id = id })?.ToRun();
    }

    /// <summary>Up to <paramref name="limit"/> runs, newest first, before a place in the sequence, and the place before which more follow.</summary>
    public (IReadOnlyList<StoredPlanRun> Runs, long? Next) List(PlanState? state, string? design, PlanPurpose? purpose, long? before, int limit)
    {
        using var connection = database.Connect();
        var rows = connection.Query<PlanRow>(
            $"""
            SELECT {PlanRow.Columns} FROM plan_runs
            WHERE (@Before IS NULL OR sequence < @Before) AND (@State IS NULL OR state = @State)
              AND (@Design IS NULL OR design_reference = @Design) AND (@Purpose IS NULL OR purpose = @Purpose)
            ORDER BY sequence DESC LIMIT @Rows
            """,
            new
            {
                Before = before,
                State = state is { } known ? Words.Of(known) : null,
                Design = design,
                Purpose = purpose is { } asked ? Words.Of(asked) : null,
                Rows = limit + 1,
            }).AsList();
        return ([.. rows.Take(limit).Select(row => row.ToRun())], rows.Count > limit ? rows[limit - 1].Sequence : null);
    }

    /// <summary>A queued run begins; false if it is no longer queued.</summary>
    public bool Begin(string id)
    {
        using var connection = database.Connect();
        return connection.Execute("UPDATE plan_runs SET state = 'planning' WHERE id = @Id AND state = 'queued'", new { Id = id }) > 0;
    }

    /// <summary>A run that is still queued is cancelled; false if it is no longer queued.</summary>
    public bool CancelQueued(string id)
    {
        using var connection = database.Connect();
        return connection.Execute(
            "UPDATE plan_runs SET state = 'cancelled', finished_at = @Now WHERE id = @Id AND state = 'queued'",
            new { Id = id, Now = Stamp.Of(clock.GetUtcNow()) }) > 0;
    }

    /// <summary>A run under way has found which way to build its design: from here on its problem is that.</summary>
    public void Settle(string id, string problem, string madeWith)
    {
        using var connection = database.Connect();
        connection.Execute(
            "UPDATE plan_runs SET problem = @Problem, made_with = @MadeWith WHERE id = @Id AND state = 'planning'",
            new { Id = id, Problem = problem, MadeWith = madeWith });
    }

    /// <summary>Keeps how far a run is, and its best plan if there is a better one.</summary>
    public void Advance(string id, string progress, string? plan)
    {
        using var connection = database.Connect();
        connection.Execute(
            "UPDATE plan_runs SET progress = @Progress, plan = coalesce(@Plan, plan) WHERE id = @Id AND state = 'planning'",
            new { Id = id, Progress = progress, Plan = plan });
    }

    /// <summary>A run ends with a plan, or without; false if it had ended before.</summary>
    public bool Finish(string id, PlanState state, string? progress, string? plan)
    {
        using var connection = database.Connect();
        return connection.Execute(
            """
            UPDATE plan_runs SET state = @State, finished_at = @Now, progress = coalesce(@Progress, progress), plan = coalesce(@Plan, plan)
            WHERE id = @Id AND state IN ('queued', 'planning')
            """,
            new { Id = id, State = Words.Of(state), Now = Stamp.Of(clock.GetUtcNow()), Progress = progress, Plan = plan }) > 0;
    }

    /// <summary>A run fails; whatever plan it had is taken away.</summary>
    public void Fail(string id, string failure)
    {
        using var connection = database.Connect();
        connection.Execute(
            "UPDATE plan_runs SET state = 'failed', finished_at = @Now, failure = @Failure, plan = NULL WHERE id = @Id AND state IN ('queued', 'planning')",
            new { Id = id, Now = Stamp.Of(clock.GetUtcNow()), Failure = failure });
    }

    /// <summary>The runs that are queued or planning, and who plans them.</summary>
    public IReadOnlyList<(string Id, string Owner)> ListUnderWay()
    {
        using var connection = database.Connect();
        return [.. connection.Query<PlanRow>("SELECT id, owner FROM plan_runs WHERE state IN ('queued', 'planning')").Select(row => (row.Id, row.Owner))];
    }
}
