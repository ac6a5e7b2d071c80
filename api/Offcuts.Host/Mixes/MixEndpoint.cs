using System.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Mixes;

/// <summary><c>/v1/mixes</c>: answered while the client waits, and nothing is kept.</summary>
internal static class MixEndpoint
{
    public static void MapMixes(this IEndpointRouteBuilder app) => app.MapPost("/v1/mixes", MixAsync).IsHeavy(HeavyKind.Search);

    private static async Task<Ok<MixRecord>> MixAsync(
        HttpRequest request, ProblemBuilder builder, DesignStore designs, AuditedPlanner planner, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(request, WireJson.Default.MixRequest, cancellationToken);
        var asking = MixAsking.Read(asked, builder, designs);
        var began = Stopwatch.GetTimestamp();
        var search = new MixSearch(asking.Question, new PlanLimits(TimeSpan.FromMilliseconds(asked.BudgetMs), asked.Seed), planner.Solve, null, cancellationToken);
        // The search keeps its thread for as long as the budget, so it takes none from the pool.
        var answer = await Task.Factory.StartNew(search.Run, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        cancellationToken.ThrowIfCancellationRequested();
        return TypedResults.Ok(MixMapping.ToRecord(asking, answer, Stopwatch.GetElapsedTime(began)));
    }
}
