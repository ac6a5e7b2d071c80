using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Builds;
using Offcuts.Host.Fits;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Keeping;

/// <summary><c>/v1/cull</c>: what the shop may let go.</summary>
internal sealed class CullEndpoint(
    BoardStore boards, DesignStore designs, PlaceStore places, StoredOffers offers, Workshop workshop, Expiry expiry, TimeProvider clock, HeavyWork work)
{
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapMethods("/v1/cull", ["GET", "HEAD"], async (HttpContext context, CullEndpoint cull) => TypedResults.Ok(await cull.AnswerAsync(context)));

    private async Task<CullRecord> AnswerAsync(HttpContext context)
    {
        var (top, free, oldDays) = CullRequest.Read(context.Request.Query);
        await work.EnterAsync(HeavyKind.Look, context);
        expiry.Run();
        var (shop, catalogue) = workshop.Now();
        var (saved, unreadable) = Designs(shop, catalogue);
        var full = places.List().Where(place => place.Place.LimitCubicMetres is { } limit && place.CubicMetres > limit).ToDictionary(place => place.Place.Name, StringComparer.Ordinal);
        var suggested = new Cull(shop, offers.Rates(shop, catalogue), DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), oldDays).Suggest(
            [.. boards.ListFree().Select(board => new CullBoard(
                board, saved.Count == 0 ? null : saved.Exists(design => Usefulness.Serves(board, design, shop)),
                ClearPart.Of(board.Size, board.Defects, shop.KeptOf(board.Species))))],
            full.ToDictionary(place => place.Key, place => place.Value.CubicMetres - place.Value.Place.LimitCubicMetres!.Value, StringComparer.Ordinal));
        var text = new CullText(shop, catalogue, workshop.WrittenKeepRule(catalogue), saved.Count, full);
        List<CullCandidate> asked = [.. (free is { } space ? Cull.Freeing(suggested, space) : suggested).Take(top)];
        return new(
            [.. asked.Select(candidate => ToItem(candidate, shop, catalogue, text))], decimal.Round(asked.Sum(candidate => candidate.CubicMetres), 9),
            MoneyText.ToDecimal(new Money(asked.Sum(candidate => candidate.Worth.MinorUnits)), shop.Currency), shop.Currency, suggested.Count, saved.Count, unreadable);
    }

    // As they are written, every answer to what they leave open with them: what serves any of these is of use.
    private (List<Design> Designs, List<string> Unreadable) Designs(Shop shop, SpeciesCatalogue catalogue)
    {
        var written = SavedDesigns.Written(designs, catalogue, shop.Currency).ToList();
        return (
            [.. written.Select(each => each.Design).OfType<Design>().Select(design => DesignResolver.Resolve(design, catalogue.All))],
            [.. written.Where(each => each.Design is null).Select(each => each.Stored.Reference)]);
    }

    private static CullItem ToItem(CullCandidate candidate, Shop shop, SpeciesCatalogue catalogue, CullText text) => new(
        BoardMapping.ToRecord(candidate.Board, catalogue), candidate.Quantity, candidate.Days, decimal.Round(candidate.CubicMetres, 9),
        MoneyText.ToDecimal(candidate.Worth, shop.Currency),
        [.. candidate.Reasons.Select(reason => new CullReasonRecord(Words.Of(reason), text.Of(reason, candidate)))]);
}
