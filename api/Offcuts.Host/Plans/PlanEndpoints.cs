using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary><c>/v1/plans</c>.</summary>
internal static class PlanEndpoints
{
    // Letters and digits that are not confused by eye, as in the ids of boards; 20^8 ids, far too many to guess one.
    private const string IdSigns = "34679acdefhjkpqrtwxy";
    private static readonly TimeSpan CancellationPatience = TimeSpan.FromSeconds(5);

    public static void MapPlans(this IEndpointRouteBuilder app)
    {
        app.MapPost("/v1/plans", CreateAsync);
        app.MapMethods("/v1/plans", ["GET", "HEAD"], List);
        app.MapMethods("/v1/plans/{id}", ["GET", "HEAD"], Get);
        app.MapPost("/v1/plans/{id}/cancellation", CancelAsync);
        app.MapMethods("/v1/plans/{id}/shopping", ["GET", "HEAD"], GetShopping);
        app.MapMethods("/v1/plans/{id}/problem", ["GET", "HEAD"], GetProblem);
    }

    private static async Task<Results<Created<PlanRecord>, Accepted<PlanRecord>>> CreateAsync(
        HttpRequest request, HttpResponse response, ProblemBuilder builder, EarlierPlans earlier, PlanQueue queue, PlanStore store, Workshop workshop,
        DesignStore designs, CancellationToken cancellationToken)
    {
        var asked = await RequestBody.ReadAsync(request, WireJson.Default.PlanRequest, cancellationToken);
        var from = asked.From is { } id ? earlier.IdOf(id) : null;
        var faults = new Faults();
        var purpose = faults.Word<PlanPurpose>("#/purpose", asked.Purpose);
        faults.ThrowIfAny();
        var (problem, design, madeWith) = builder.Build(asked, from);
        var run = queue.Add(new NewPlanRun(
            RandomNumberGenerator.GetString(IdSigns, 8), design.Name, design.Version, design.Reference, asked.BudgetMs, asked.Seed, ProcessMark.Mine,
            JsonSerializer.Serialize(ProblemMapping.ToRecord(problem), WireJson.Default.InlineProblem), from,
            madeWith is null ? null : JsonSerializer.Serialize(madeWith, WireJson.Default.MadeWithRecord),
            asked.Designs is { } several ? JsonSerializer.Serialize([.. several.Select(each => designs.Find(each)!.Reference)], WireJson.Default.IReadOnlyListString)
                // What would be of the same builds is of the same designs.
                : purpose == PlanPurpose.WhatIf && from is { } earlierId && asked.Inline?.Builds is not null ? store.Find(earlierId)?.Asked.Designs
                : null,
            purpose));
        var place = $"/v1/plans/{run.Id}";
        if (Preference.WaitOf(request) is { } wait)
        {
            response.Headers["Preference-Applied"] = $"wait={wait.TotalSeconds}";
            if (await EndsWithinAsync(run, wait, cancellationToken))
            {
                return TypedResults.Created(place, ToRecord(store.Find(run.Id)!, workshop));
            }
        }

        response.Headers.RetryAfter = "1";
        return TypedResults.Accepted(place, ToRecord(store.Find(run.Id)!, workshop));
    }

    private static Ok<PlanPage> List(HttpRequest request, PlanStore store, BuildStore builds, Expiry expiry)
    {
        var reader = new QueryReader(request.Query, "state", "design", "purpose");
        var state = reader.Word<PlanState>("state");
        var purpose = reader.Word<PlanPurpose>("purpose");
        var (before, limit) = reader.Page();
        var (found, next) = store.List(state, reader.Text("design"), purpose, before, limit);
        expiry.Run();
        var built = builds.FindAll([.. found.Select(run => run.Asked.Id)]);
        return TypedResults.Ok(new PlanPage([.. found.Select(run => ToSummary(run, built.GetValueOrDefault(run.Asked.Id)))], QueryReader.Next(request.HttpContext, next)));
    }

    private static Ok<PlanRecord> Get(string id, HttpResponse response, PlanStore store, BuildStore builds, Workshop workshop, Expiry expiry)
    {
        expiry.Run();
        var run = FindRun(id, store);
        if (run.FinishedAt is null)
        {
            response.Headers.RetryAfter = "1";
        }

        return TypedResults.Ok(BuildMapping.WithBuild(ToRecord(run, workshop), builds.Find(run.Asked.Id), workshop.Shop()));
    }

    private static async Task<Ok<PlanRecord>> CancelAsync(string id, PlanQueue queue, PlanStore store, Workshop workshop, CancellationToken cancellationToken)
    {
        var run = FindRun(id, store);
        if (run.FinishedAt is null)
        {
            if (queue.Find(run.Asked.Id) is { } here)
            {
                if (!store.CancelQueued(run.Asked.Id))
                {
                    here.Cancel();
                    await EndsWithinAsync(here, CancellationPatience, cancellationToken);
                }
            }
            else if (store.Find(run.Asked.Id)!.FinishedAt is null)
            {
                throw new OffcutsException(ErrorCode.Conflict, $"Plan '{id}' is made by another process that shares the database: cancel it there.");
            }
        }

        return TypedResults.Ok(ToRecord(store.Find(run.Asked.Id)!, workshop));
    }

    private static Ok<ShoppingRecord> GetShopping(string id, PlanStore store, Workshop workshop)
    {
        var run = FindRun(id, store);
        var catalogue = workshop.Catalogue();
        var problem = ReadersUnit.ProblemOf(run, workshop, catalogue);
        var plan = ResultReading.ToPlan(
            JsonSerializer.Deserialize(run.Plan ?? throw new OffcutsException(ErrorCode.NotFound, $"Plan '{id}' is {Words.Of(run.State)} and has nothing to buy yet: ask for its state."), WireJson.Default.PlanResult)!, problem);
        var design = new PlanDesign(run.Asked.DesignName, run.Asked.DesignVersion, run.Asked.DesignReference);
        return TypedResults.Ok(new ShoppingRecord(
            run.Asked.Id, design, problem.Shop.Currency, ShoppingLists.AtCounter(plan, problem, catalogue), MoneyText.ToDecimal(plan.TotalCost, problem.Shop.Currency)));
    }

    private static Ok<InlineProblem> GetProblem(string id, PlanStore store) => TypedResults.Ok(
        JsonSerializer.Deserialize(FindRun(id, store).Asked.Problem, WireJson.Default.InlineProblem));

    private static async Task<bool> EndsWithinAsync(QueuedRun run, TimeSpan patience, CancellationToken cancellationToken)
    {
        try
        {
            await run.Ended.WaitAsync(patience, cancellationToken);
            return true;
        }
        catch (TimeoutException)
        {
            return false;
        }
    }

    internal static PlanRecord ToRecord(StoredPlanRun run, Workshop workshop) => ToRecord(run, ReadersUnit.PlanOf(run, workshop));

    private static PlanRecord ToRecord(StoredPlanRun run, PlanResult? plan) => new(
        run.Asked.Id, Words.Of(run.State), run.RequestedAt, run.FinishedAt,
        new PlanDesign(run.Asked.DesignName, run.Asked.DesignVersion, run.Asked.DesignReference),
        run.Asked.BudgetMs, run.Asked.Seed,
        run.Progress is { } progress ? JsonSerializer.Deserialize(progress, WireJson.Default.PlanProgressRecord) : null,
        run.Failure is { } failure ? JsonSerializer.Deserialize(failure, WireJson.Default.PlanFailure) : null,
        plan,
        From: run.Asked.EarlierId,
        MadeWith: run.Asked.MadeWith is { } madeWith ? JsonSerializer.Deserialize(madeWith, WireJson.Default.MadeWithRecord) : null,
        Purpose: Words.Of(run.Asked.Purpose));

    private static PlanSummary ToSummary(StoredPlanRun run, Build? build)
    {
        var record = ToRecord(run, run.Plan is { } plan ? JsonSerializer.Deserialize(plan, WireJson.Default.PlanResult) : null);
        return new(
            record.Id, record.State, record.RequestedAt, record.Design, record.Plan?.Status, record.Plan?.Currency, record.Plan?.TotalCost, record.Plan?.Gap,
            build is not null && record.Plan is { } result ? BuildMapping.StateOf(build, result.Boards.Count) : null,
            record.Purpose);
    }

    /// <summary>The run of this id, whose letters may be of any case.</summary>
    internal static StoredPlanRun FindRun(string id, PlanStore store) => store.Find(id.ToLowerInvariant()) ??
        throw new OffcutsException(ErrorCode.NotFound, $"There is no plan '{id}'. List the plans to see which there are.");
}
