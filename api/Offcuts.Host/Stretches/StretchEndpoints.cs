using System.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;

namespace Offcuts.Host.Stretches;

/// <summary><c>/v1/stretches</c>: answers while the client waits, and keeps nothing.</summary>
internal static class StretchEndpoints
{
    public static void MapStretches(this IEndpointRouteBuilder app) => app.MapPost("/v1/stretches", StretchAsync);

    private static async Task<Ok<StretchRecord>> StretchAsync(
        HttpRequest request, ProblemBuilder builder, AuditedPlanner planner, StretchGate gate, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(request, WireJson.Default.StretchRequest, cancellationToken);
        var asking = StretchAsking.Read(asked, builder);
        using var turn = gate.Enter();
        var began = Stopwatch.GetTimestamp();
        var search = new StretchSearch(
            asking.Question(), new PlanLimits(TimeSpan.FromMilliseconds(asked.BudgetMs), asked.Seed), planner.Solve, cancellationToken);
        // The search keeps its thread for as long as the budget, so it takes none from the pool.
        var answer = await Task.Factory.StartNew(search.Run, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        cancellationToken.ThrowIfCancellationRequested();
        return TypedResults.Ok(asking.ToRecord(answer, Stopwatch.GetElapsedTime(began)));
    }
}
