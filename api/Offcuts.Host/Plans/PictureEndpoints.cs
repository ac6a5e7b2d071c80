using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Pictures;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>The pictures of a plan: its cut sheet and the diagrams of its boards.</summary>
internal static class PictureEndpoints
{
    public static void MapPictures(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/plans/{id}/cut-sheet", ["GET", "HEAD"], GetCutSheet);
        app.MapMethods("/v1/plans/{id}/diagrams/{number}", ["GET", "HEAD"], GetDiagram);
    }

    private static ContentHttpResult GetCutSheet(string id, PlanStore store, EarlierPlans earlier, Workshop workshop) =>
        TypedResults.Text(CutSheet.Html(Document(id, store, earlier, workshop)), "text/html");

    private static ContentHttpResult GetDiagram(string id, string number, PlanStore store, EarlierPlans earlier, Workshop workshop) =>
        int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var board)
            ? TypedResults.Text(Diagram.Svg(Document(id, store, earlier, workshop), board), "image/svg+xml")
            : throw new OffcutsException(ErrorCode.NotFound, $"'{number}' is no board's number: give a number from 1.");

    private static PlanDocument Document(string id, PlanStore store, EarlierPlans earlier, Workshop workshop)
    {
        var run = PlanEndpoints.FindRun(id, store);
        if (run.Plan is not { } plan)
        {
            throw new OffcutsException(ErrorCode.NotFound, $"Plan '{id}' is {Words.Of(run.State)} and has no plan to draw: ask for its state.");
        }

        var catalogue = workshop.Catalogue();
        var problem = ReadersUnit.ProblemOf(run, workshop, catalogue) with { Earlier = run.Asked.EarlierId is { } from ? earlier.Read(from) : null };
        var drawn = ResultReading.ToPlan(JsonSerializer.Deserialize(plan, WireJson.Default.PlanResult)!, problem);
        return new PlanDocument(drawn, problem, run.Asked.Id, run.Asked.DesignVersion, run.FinishedAt ?? run.RequestedAt, catalogue, MadeWith(), run.Asked.EarlierId);

        string? MadeWith() => run.Asked.MadeWith is { } json && JsonSerializer.Deserialize(json, WireJson.Default.MadeWithRecord) is { } made
            ? MadeWithText.Of(made.LengthsMm, made.Numbers, made.Choices, problem.Shop.Unit)
            : null;
    }
}
