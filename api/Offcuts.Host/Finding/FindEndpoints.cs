using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Builds;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning.Finding;
using Offcuts.Storage;

namespace Offcuts.Host.Finding;

/// <summary><c>/v1/boards/find</c>.</summary>
internal static class FindEndpoints
{
    public static void MapFinding(this IEndpointRouteBuilder app) => app.MapMethods("/v1/boards/find", ["GET", "HEAD"], Find);

    private static Ok<BoardFindRecord> Find(
        HttpRequest request, BoardStore boards, PlaceStore places, StoredOffers offers, Workshop workshop, Expiry expiry, TimeProvider clock)
    {
        expiry.Run();
        var (shop, catalogue) = (workshop.Shop(), workshop.Catalogue());
        var (piece, limit) = new PieceRequest(catalogue, boards.Names, shop.Unit).Read(request.Query);
        var problem = new PlanningProblem
        {
            Stock = [.. boards.ListFree().Where(piece.MayComeFrom)],
            Design = piece.AsDesign(),
            Shop = shop,
            Rates = offers.Rates(shop, catalogue),
            Reaches = places.Reaches(),
            Today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime),
        };
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
