using System.Xml.Linq;
using Offcuts.Domain;

namespace Offcuts.Pictures.Sheets;

/// <summary>Which boards to fetch from the rack before the first cut.</summary>
internal static class RackSection
{
    public static XElement? Of(PlanDocument document)
    {
        var boards = document.Plan.Boards.Where(board => board.BoardId is not null).OrderBy(board => board.Number).ToList();
        return boards.Count == 0 ? null : Markup.Html(
            "section", null, Markup.Html("h2", null, "Fetch from the rack"),
            Table.Of(["", "Board", "Wood", "Size", "Lies", "Note"], boards.Select(board => Row(document, board))));
    }

    private static IEnumerable<string> Notes(PlanDocument document, Board? stock)
    {
        string?[] notes =
        [
            stock is { Warp.IsFlat: false } ? $"warped: {WarpText.Format(stock.Warp, document.Unit)}" : null,
            stock is not null && stock.Ends != default ? $"ends: {EndsText.Format(stock.Ends)}" : null,
            stock?.Batch is { } batch ? $"batch {batch}" : null,
            stock?.Note,
            stock?.Source is { } source ? $"from {source}" : null,
        ];
        return notes.OfType<string>();
    }

    private static object?[] Row(PlanDocument document, BoardCut board)
    {
        var stock = document.Problem.Stock.FirstOrDefault(stock => stock.Id == board.BoardId);
        return
        [
            Table.Tick($"fetched {board.BoardId}"), Markup.Html("strong", null, Words.Name(document, board)),
            Words.Wood(document, board.Species, board.Kind, board.Surface), SizeText.Format(board.Size, document.Unit),
            document.Lies(stock) ?? "", string.Join("; ", Notes(document, stock)),
        ];
    }
}
