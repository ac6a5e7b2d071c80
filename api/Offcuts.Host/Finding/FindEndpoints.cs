using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning.Finding;
using Offcuts.Storage;

namespace Offcuts.Host.Finding;

/// <summary><c>/v1/boards/find</c>.</summary>
internal static class FindEndpoints
{
    public static void MapFinding(this IEndpointRouteBuilder app) => app.MapMethods("/v1/boards/find", ["GET", "HEAD"], FindAsync);

    private static async Task<Ok<BoardFindRecord>> FindAsync(HttpContext context, SpokenLines lines, StoredProblem store, Workshop workshop, HeavyWork work)
    {
        var (shop, catalogue) = workshop.Now();
        var (piece, limit) = new PieceRequest(catalogue, lines, shop).Read(context.Request.Query);
        await work.EnterAsync(HeavyKind.Look, context);
        var problem = store.Of(piece.AsDesign(), shop, catalogue);
        problem = problem with { Stock = [.. problem.Stock.Where(piece.MayComeFrom)] };
        var found = BoardFinder.Find(problem, limit);
        return TypedResults.Ok(new BoardFindRecord(
            FindText.Of(piece, catalogue.NameOf(piece.Species), shop.Unit), piece.Quantity,
            [.. found.Fits.Select(fit => new BoardFitRecord(
                BoardMapping.ToRecord(fit.Board, catalogue), Words.Of(fit.Reach), fit.Gives, fit.Cut, MoneyText.ToDecimal(fit.WorthSpent, shop.Currency),
                [.. fit.Leftovers.Select(ShopMapping.ToRecord)]))],
            found.Boards, found.Gives, [.. found.Nearest.Select(near => ToRecord(near, problem, catalogue))], shop.Currency));
    }

    private static NearBoardRecord ToRecord(NearBoard near, PlanningProblem problem, SpeciesCatalogue catalogue) => new(
        BoardMapping.ToRecord(problem.Stock.First(board => board.Id == near.BoardId), catalogue),
        [.. near.Lacks.Select(lack => new BoardLackRecord(Words.Of(lack.Reason), lack.Needed?.Millimetres, lack.Has?.Millimetres))],
        FindText.WhyNot(near, problem.Shop.Unit));
}
