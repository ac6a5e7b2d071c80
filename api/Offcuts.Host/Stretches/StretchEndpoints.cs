using System.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;

namespace Offcuts.Host.Stretches;

/// <summary><c>/v1/stretches</c> and <c>/v1/fills</c>: answered while the client waits, and nothing is kept.</summary>
internal static class StretchEndpoints
{
    public static void MapStretches(this IEndpointRouteBuilder app)
    {
        app.MapPost("/v1/stretches", StretchAsync).IsHeavy(HeavyKind.Search);
        app.MapPost("/v1/fills", FillAsync).IsHeavy(HeavyKind.Search);
    }

    private static async Task<Ok<StretchRecord>> StretchAsync(
        HttpRequest request, ProblemBuilder builder, AuditedPlanner planner, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(request, WireJson.Default.StretchRequest, cancellationToken);
        var asking = StretchAsking.Read(asked, builder);
        var (answer, elapsed) = await SearchAsync(asking.Question(), asked.BudgetMs, asked.Seed, planner, cancellationToken);
        return TypedResults.Ok(asking.ToRecord(answer, elapsed));
    }

    private static async Task<Ok<StretchRecord>> FillAsync(
        HttpRequest request, ProblemBuilder builder, AuditedPlanner planner, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(request, WireJson.Default.FillRequest, cancellationToken);
        var asking = FillAsking.Read(asked, builder);
        var (answer, elapsed) = await SearchAsync(asking.Question(), asked.BudgetMs, asked.Seed, planner, cancellationToken);
        return TypedResults.Ok(asking.ToRecord(answer, elapsed));
    }

    private static async Task<(StretchAnswer Answer, TimeSpan Elapsed)> SearchAsync(
        StretchQuestion question, int budgetMs, int seed, AuditedPlanner planner, CancellationToken cancellationToken)
    {
        var began = Stopwatch.GetTimestamp();
        var search = new StretchSearch(question, new PlanLimits(TimeSpan.FromMilliseconds(budgetMs), seed), planner.Solve, cancellationToken);
        // The search keeps its thread for as long as the budget, so it takes none from the pool.
        var answer = await Task.Factory.StartNew(search.Run, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        cancellationToken.ThrowIfCancellationRequested();
        return (answer, Stopwatch.GetElapsedTime(began));
    }
}
