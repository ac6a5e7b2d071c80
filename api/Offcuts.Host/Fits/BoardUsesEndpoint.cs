using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary><c>/v1/boards/{id}/uses</c>: which parts of which saved designs a board could become.</summary>
internal static class BoardUsesEndpoint
{
    public static void MapBoardUses(this IEndpointRouteBuilder app) => app.MapMethods("/v1/boards/{id}/uses", ["GET", "HEAD"], GetAsync);

    private static async Task<Ok<BoardUsesRecord>> GetAsync(
        string id, HttpContext context, BoardStore boards, DesignStore designs, StoredOffers offers, Workshop workshop, Expiry expiry, HeavyWork work)
    {
        expiry.Run();
        var (shop, catalogue) = workshop.Now();
        var board = boards.Find(BoardEndpoints.Written(id)) ?? throw BoardEndpoints.NoBoard(id);
        await work.EnterAsync(HeavyKind.Look, context);
        var rates = offers.Rates(shop, catalogue);
        var items = SavedDesigns.Read(designs, catalogue, shop.Currency).Designs
            .Select(saved => new DesignUsesRecord(
                saved.Reference, saved.Design.Name, saved.Version,
                [.. BoardUses.Of(board, saved.Design, shop, rates).Select(use => ToRecord(use, saved.Design))]))
            .Where(uses => uses.Parts.Count > 0).OrderBy(uses => uses.Design, StringComparer.Ordinal);
        return TypedResults.Ok(new BoardUsesRecord(BoardMapping.ToRecord(board, catalogue), [.. items]));
    }

    private static PartUseRecord ToRecord(PartUse use, Design design)
    {
        var size = use.IsPanel ? design.Panels.First(panel => panel.Name == use.Name).Finished : design.Parts.First(part => part.Name == use.Name).Finished;
        return new PartUseRecord(
            use.Name, use.IsPanel ? "panel" : "part", size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres, use.Wanted, use.Count,
            use.IsPanel ? use.StripWidth.Millimetres : null);
    }
}
