using System.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;

namespace Offcuts.Host.Stretches;

/// <summary><c>/v1/stretches</c> and <c>/v1/fills</c>: answered while the client waits, at once or with events on the way, and nothing is kept.</summary>
internal static class StretchEndpoints
{
    public static void MapStretches(this IEndpointRouteBuilder app)
    {
        app.MapPost("/v1/stretches", StretchAsync);
        app.MapPost("/v1/fills", FillAsync);
    }

    private static async Task<Results<Ok<StretchRecord>, ServerSentEventsResult<string>>> StretchAsync(
        HttpContext context, ProblemBuilder builder, AuditedPlanner planner, EventAnswers answers, HeavyWork work, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(context.Request, WireJson.Default.StretchRequest, cancellationToken);
        var asking = StretchAsking.Read(asked, builder);
        return await SearchAsync(asking.Question(), asked.BudgetMs, asked.Seed, asking.ToRecord, asking.ToRecord, planner, answers, work, context);
    }

    private static async Task<Results<Ok<StretchRecord>, ServerSentEventsResult<string>>> FillAsync(
        HttpContext context, ProblemBuilder builder, AuditedPlanner planner, EventAnswers answers, HeavyWork work, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(context.Request, WireJson.Default.FillRequest, cancellationToken);
        var asking = FillAsking.Read(asked, builder);
        return await SearchAsync(asking.Question(), asked.BudgetMs, asked.Seed, asking.ToRecord, asking.ToRecord, planner, answers, work, context);
    }

    private static async Task<Results<Ok<StretchRecord>, ServerSentEventsResult<string>>> SearchAsync(
        StretchQuestion question, int budgetMs, int seed, Func<StretchAnswer, TimeSpan, StretchRecord> answer, Func<StretchProgress, StretchProgressRecord> progress,
        AuditedPlanner planner, EventAnswers answers, HeavyWork work, HttpContext context)
    {
        var end = await work.EnterAsync(HeavyKind.Search, context);
        var began = Stopwatch.GetTimestamp();
        return await answers.SearchAsync(
            context,
            (tell, left) => answer(
                new StretchSearch(
                    question, new PlanLimits(TimeSpan.FromMilliseconds(budgetMs), seed), planner.Solve, left, far => tell(progress(far))).Run(),
                Stopwatch.GetElapsedTime(began)),
            WireJson.Default.StretchProgressRecord, WireJson.Default.StretchRecord, end);
    }
}
