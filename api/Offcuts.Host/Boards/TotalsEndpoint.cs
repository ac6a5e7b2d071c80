using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary><c>/v1/boards/totals</c>: boards added up.</summary>
internal static class TotalsEndpoint
{
    public static Ok<BoardTotalsRecord> Get(
        HttpRequest request, BoardStore boards, StoredOffers offers, Workshop workshop, Expiry expiry, TimeProvider clock)
    {
        var (shop, catalogue) = workshop.Now();
        var reader = new FieldReader(request.Query, [.. BoardListRequest.Filters, "by"]);
        var filter = BoardListRequest.FilterOf(reader, catalogue);
        var by = reader.Word<TotalsBy>("by") ?? TotalsBy.Species;
        reader.Faults.ThrowIfAny();
        expiry.Run();
        // What is cut up or gone is no wood any more, unless it is asked for.
        var found = boards.ListAll(filter with { IsThere = filter.Status is null });
        var (rates, today) = (offers.Rates(shop, catalogue), DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime));
        var totals = new BoardTotals(
            shop.Unit, today, catalogue.NameOf, board => Worth.OfBoard(board, rates.Of(board.Species), shop.KeptOf(board.Species), today));
        return TypedResults.Ok(new BoardTotalsRecord(
            Words.Of(by), [.. totals.Of(found, by).Select(ToRecord)], ToRecord(totals.Of(found)), shop.Currency));

        BoardTotalRecord ToRecord(BoardTotal total) => new(
            total.Name, total.Boards, decimal.Round(total.CubicMetres, 9), MoneyText.ToDecimal(total.Worth, shop.Currency),
            total.From?.Millimetres, total.To?.Millimetres);
    }
}
