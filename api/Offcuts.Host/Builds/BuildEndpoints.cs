using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Builds;

/// <summary>What becomes of a plan: <c>/v1/plans/{id}/acceptance</c>, <c>/release</c> and <c>/closings</c>.</summary>
internal static class BuildEndpoints
{
    public static void MapBuilds(this IEndpointRouteBuilder app)
    {
        app.MapPost("/v1/plans/{id}/acceptance", Accept);
        app.MapPost("/v1/plans/{id}/release", Release);
        app.MapPost("/v1/plans/{id}/closings", CloseAsync);
    }

    private static Ok<PlanRecord> Accept(string id, PlanStore plans, BuildStore builds, Workshop workshop, Expiry expiry)
    {
        var (run, plan, problem) = Read(id, plans, workshop);
        if (run.FinishedAt is null)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {run.Asked.Id} is still {Words.Of(run.State)}: wait for its end, or cancel it to take what it has.");
        }

        expiry.Run();
        var stock = problem.Stock.ToDictionary(board => board.Id, StringComparer.Ordinal);
        builds.Accept(
            run.Asked.Id, [.. plan.Boards.Where(board => board.BoardId is not null).Select(board => new WantedBoard(board.Number, stock[board.BoardId!]))], Planned(run, plan, problem));
        return Told(run, builds, workshop);
    }

    private static Ok<PlanRecord> Release(string id, PlanStore plans, BuildStore builds, Workshop workshop)
    {
        var (run, plan, _) = Read(id, plans, workshop);
        if (builds.Find(run.Asked.Id)?.Closed.Count == plan.Boards.Count)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {run.Asked.Id} is built: it holds no boards any more.");
        }

        builds.Release(run.Asked.Id);
        return Told(run, builds, workshop);
    }

    private static async Task<Ok<PlanRecord>> CloseAsync(
        string id, HttpRequest request, PlanStore plans, BuildStore builds, Workshop workshop, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.ClosingEntry, cancellationToken);
        var (run, plan, problem) = Read(id, plans, workshop);
        var build = builds.Find(run.Asked.Id);
        var faults = new Faults();
        var reports = entry.Boards is { } said
            ? [.. faults.Entries("#/boards", said, plan.Boards.Count, least: 1).Select(board => ClosingMapping.ToReport(board.Entry, $"#/boards/{board.Index}", faults))]
            : plan.Boards.Where(board => build?.HasCut(board.Number) != true).Select(board => new BoardReport { Number = board.Number }).ToList();
        faults.ThrowIfAny();
        if (reports.Count == 0)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {run.Asked.Id} is built: all its boards are closed.");
        }

        var cut = reports.Index().Select(report => ClosingMapping.ToCut(report.Item, plan, problem, $"#/boards/{report.Index}", faults)).OfType<CutBoard>().ToList();
        faults.ThrowIfAny();
        builds.Close(run.Asked.Id, cut);
        return Told(run, builds, workshop);
    }

    // Several builds are in the order of their designs; one of which pieces are missing is not built whole.
    private static IReadOnlyList<PlannedBuild> Planned(StoredPlanRun run, Plan plan, PlanningProblem problem) => run.Asked switch
    {
        { Designs: { } several } => [.. JsonSerializer.Deserialize(several, WireJson.Default.IReadOnlyListString)!.Zip(problem.Builds, (design, build) =>
            new PlannedBuild(design, plan.Boards.Count, plan.MissingCountOf(build) == 0))],
        { DesignReference: { } design } => [new PlannedBuild(design, plan.Boards.Count, plan.MissingCount == 0)],
        _ => [],
    };

    private static (StoredPlanRun Run, Plan Plan, PlanningProblem Problem) Read(string id, PlanStore plans, Workshop workshop)
    {
        var run = PlanEndpoints.FindRun(id, plans);
        if (run.Plan is null)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"Plan {run.Asked.Id} is {Words.Of(run.State)} and has no boards to take.");
        }

        var (problem, plan) = EarlierPlans.Read(run, workshop.Catalogue());
        return (run, plan, problem);
    }

    private static Ok<PlanRecord> Told(StoredPlanRun run, BuildStore builds, Workshop workshop) =>
        TypedResults.Ok(BuildMapping.WithBuild(PlanEndpoints.ToRecord(run, workshop), builds.Find(run.Asked.Id), workshop.Shop()));
}
