using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Pictures;
using Offcuts.Storage;

namespace Offcuts.Host.Reports;

/// <summary><c>/v1/reports</c>.</summary>
internal static class ReportEndpoints
{
    public static void MapReports(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/reports/builds", ["GET", "HEAD"], ListBuilds);
        app.MapMethods("/v1/reports/pile", ["GET", "HEAD"], GetPile);
        app.MapMethods("/v1/reports/pile/chart", ["GET", "HEAD"], GetPileChart);
    }

    private static Ok<BuildYieldPage> ListBuilds(HttpRequest request, BuildStore builds, PlanStore plans, Workshop workshop, Expiry expiry)
    {
        var (before, limit) = new QueryReader(request.Query).Page();
        expiry.Run();
        var (found, next) = builds.List(before, limit);
        var catalogue = workshop.Catalogue();
        return TypedResults.Ok(new BuildYieldPage(
            [.. found.Select(build => ToRecord(build.Build, plans.Find(build.PlanId)!, catalogue))], QueryReader.Next(request.HttpContext, next)));
    }

    private static Ok<PileRecord> GetPile(HistoryStore history) => TypedResults.Ok(new PileRecord(
        [.. history.ListPile().Select(point => new PilePointRecord(point.Day, point.Boards, decimal.Round(point.CubicMetres, 9)))]));

    private static ContentHttpResult GetPileChart(HistoryStore history, Workshop workshop, TimeProvider clock) => TypedResults.Text(
        PileChart.Svg(history.ListPile(), DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), workshop.Shop().Unit), "image/svg+xml");

    private static BuildYieldRecord ToRecord(Build build, StoredPlanRun run, SpeciesCatalogue catalogue)
    {
        var (problem, plan) = EarlierPlans.Read(run, catalogue);
        var yield = BuildYield.Of(build, plan, problem);
        var currency = problem.Shop.Currency;
        return new BuildYieldRecord(
            run.Asked.Id, new PlanDesign(run.Asked.DesignName, run.Asked.DesignVersion, run.Asked.DesignReference), BuildMapping.StateOf(build, plan.Boards.Count), build.AcceptedAt,
            decimal.Round(yield.ConsumedCubicMetres, 9), decimal.Round(yield.PartsCubicMetres, 9), Share(yield.Yield), Share(yield.RackShare),
            MoneyText.ToDecimal(yield.NotSpent, currency), MoneyText.ToDecimal(yield.Spent, currency), currency);
    }

    private static decimal? Share(decimal? share) => share is { } known ? decimal.Round(known, 4) : null;
}
