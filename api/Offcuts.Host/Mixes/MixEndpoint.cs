using System.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Mixes;

/// <summary><c>/v1/mixes</c>: answered while the client waits, at once or with events on the way, and nothing is kept.</summary>
internal static class MixEndpoint
{
    public static void MapMixes(this IEndpointRouteBuilder app) => app.MapPost("/v1/mixes", MixAsync);

    private static async Task<Results<Ok<MixRecord>, ServerSentEventsResult<string>>> MixAsync(
        HttpContext context, ProblemBuilder builder, DesignStore designs, AuditedPlanner planner, EventAnswers answers, HeavyWork work, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(context.Request, WireJson.Default.MixRequest, cancellationToken);
        var asking = MixAsking.Read(asked, builder, designs);
        var end = await work.EnterAsync(HeavyKind.Search, context);
        var began = Stopwatch.GetTimestamp();
        return await answers.SearchAsync(
            context,
            (tell, left) => MixMapping.ToRecord(
                asking,
                new MixSearch(
                    asking.Question, new PlanLimits(TimeSpan.FromMilliseconds(asked.BudgetMs), asked.Seed), planner.Solve,
                    far => tell(new MixProgressRecord(far.Tried, far.Counts)), left).Run(),
                Stopwatch.GetElapsedTime(began)),
            WireJson.Default.MixProgressRecord, WireJson.Default.MixRecord, end);
    }
}
