using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Pictures.Labels;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary><c>/v1/board-labels</c>: sheets of labels to print.</summary>
internal static class LabelEndpoints
{
    private const int MaxLabels = 2000;

    public static void MapLabels(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/board-labels", ["GET", "HEAD"], GetAll);
        app.MapMethods("/v1/board-labels/{sheet}", ["GET", "HEAD"], GetSheet);
    }

    private static ContentHttpResult GetAll(HttpRequest request, BoardStore boards, Workshop workshop) =>
        TypedResults.Text(SheetOf(request.Query, boards, workshop).Html(), "text/html; charset=utf-8");

    private static ContentHttpResult GetSheet(string sheet, HttpRequest request, BoardStore boards, Workshop workshop) =>
        int.TryParse(sheet, NumberStyles.None, CultureInfo.InvariantCulture, out var page)
            ? TypedResults.Text(SheetOf(request.Query, boards, workshop).Svg(page), "image/svg+xml; charset=utf-8")
            : throw new OffcutsException(ErrorCode.NotFound, $"'{sheet}' is no sheet's number: give a number from 1.");

    private static LabelSheet SheetOf(IQueryCollection query, BoardStore boards, Workshop workshop)
    {
        var faults = new Faults();
        FieldReader.CheckNames(query, ["stock", "ids", "place", "skip"], faults);
        var stock = StockOf(query["stock"], faults);
        var skip = SkipOf(query["skip"], stock, faults);
        faults.ThrowIfAny();
        var chosen = Choose(query["ids"], query["place"], boards);
        if (chosen.Sum(board => (long)board.Quantity) is var count && count is 0 or > MaxLabels)
        {
            throw new OffcutsException(ErrorCode.Invalid, count == 0
                ? "No board is chosen: name boards by their ids, or a place where some lie."
                : string.Create(CultureInfo.InvariantCulture, $"These are {count} pieces, and at most {MaxLabels} labels are drawn at once: name fewer boards, or a place."));
        }

        var (shop, catalogue) = workshop.Now();
        return new LabelSheet(chosen, stock, skip, catalogue, shop.Unit);
    }

    private static LabelStock StockOf(string? name, Faults faults)
    {
        if (name is null)
        {
            return LabelStock.All[0];
        }

        if (LabelStock.Find(name) is { } stock)
        {
            return stock;
        }

        faults.Add("?stock", $"There is no label stock '{name}': give {string.Join(", ", LabelStock.All.Select(known => known.Name))}.");
        return LabelStock.All[0];
    }

    private static int SkipOf(string? text, LabelStock stock, Faults faults)
    {
        if (text is null)
        {
            return 0;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var skip) && skip < stock.Count)
        {
            return skip;
        }

        faults.Add("?skip", string.Create(CultureInfo.InvariantCulture, $"'{text}': give how many labels of the first sheet are used, 0 to {stock.Count - 1}."));
        return 0;
    }

    // What is cut up or gone needs no label, unless it is asked for.
    private static List<Board> Choose(string? ids, string? place, BoardStore boards)
    {
        if (ids is not null)
        {
            return [.. ids.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(written =>
                BoardIds.TryNormalise(written, out var id) && boards.Find(id) is { } board
                    ? board
                    : throw BoardEndpoints.NoBoard(written))];
        }

        return [.. boards.ListAll(new BoardFilter { IsThere = true, Place = place })];
    }
}
