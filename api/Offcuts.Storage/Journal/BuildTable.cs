using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>The builds of plans: each is what the last line about its plan says.</summary>
internal static class BuildTable
{
    /// <summary>The build of a plan; null if it is not accepted.</summary>
    public static Build? Find(SqliteTransaction transaction, string planId) => Before(transaction, planId, long.MaxValue);

    /// <summary>The build of a plan before a line; null if it was not accepted then.</summary>
    public static Build? Before(SqliteTransaction transaction, string planId, long line) => Read(transaction.Connection!.QuerySingleOrDefault<string>(
        "SELECT build FROM journal WHERE plan_id = @PlanId AND line < @Line ORDER BY line DESC LIMIT 1", new { PlanId = planId, Line = line }, transaction));

    public static Build? Read(string? json) => json is null ? null : JsonSerializer.Deserialize(json, StateJson.Default.Build);

    public static string? ToJson(Build? build) => build is null ? null : JsonSerializer.Serialize(build, StateJson.Default.Build);
}
