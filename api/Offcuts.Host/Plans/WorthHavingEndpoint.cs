using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary><c>/v1/plans/{id}/worth-having</c>.</summary>
internal static class WorthHavingEndpoint
{
    private const int Tried = 8;
    private const int LeastBudget = 500;
    private const int MostBudget = 20_000;
    private const int UsualBudget = 6_000;

    public static void MapWorthHaving(this IEndpointRouteBuilder app) => app.MapMethods("/v1/plans/{id}/worth-having", ["GET", "HEAD"], GetAsync);

    private static async Task<Ok<WorthHavingList>> GetAsync(string id, HttpContext context, PlanStore store, Workshop workshop, AuditedPlanner planner, HeavyWork work)
    {
        var reader = new FieldReader(context.Request.Query, ["budgetMs"]);
        var budget = reader.Whole("budgetMs", LeastBudget, MostBudget) ?? UsualBudget;
        reader.Faults.ThrowIfAny();
        var run = PlanEndpoints.FindRun(id, store);
        if (run.Plan is null)
        {
            throw new OffcutsException(ErrorCode.NotFound, $"Plan '{id}' is {Words.Of(run.State)} and has no plan yet: ask for its state.");
        }

        var catalogue = workshop.Catalogue();
        var earlier = EarlierPlans.Read(run, catalogue);
        var end = await work.EnterAsync(HeavyKind.Search, context);
        var limits = new PlanLimits(TimeSpan.FromMilliseconds(budget), run.Asked.Seed);
        var found = await Task.Factory.StartNew(
            () => Planner.WorthHaving(earlier.Problem, earlier.Plan, limits, Tried, planner.Solve, end), end, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        end.ThrowIfCancellationRequested();
        var currency = earlier.Problem.Shop.Currency;
        return TypedResults.Ok(new WorthHavingList(run.Asked.Id, currency, [.. found.Select(each => new WorthHavingRecord(
            Words.Of(each.Kind), each.Species, catalogue.NameOf(each.Species), Words.Of(each.Surface), ShopMapping.ToRecord(each.Size),
            MoneyText.ToDecimal(each.Estimate, currency), MoneyText.ToDecimal(each.Saves, currency)))]));
    }
}
