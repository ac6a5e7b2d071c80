using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Documents.Tables;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>Boards as tables for spreadsheets: <c>/v1/board-exports</c>, and tables sent to <c>/v1/board-imports</c>.</summary>
internal static class BoardTableEndpoint
{
    public static ContentHttpResult Export(HttpRequest request, BoardStore boards, Workshop workshop, Expiry expiry)
    {
        var faults = new Faults();
        FieldReader.CheckNames(request.Query, ["separator"], faults);
        string? word = request.Query["separator"];
        var separator = word switch
        {
            null or "comma" => ',',
            "semicolon" => ';',
            _ => '\0',
        };
        if (separator == '\0')
        {
            faults.Add("?separator", $"'{word}' is not known: give comma or semicolon.");
        }

        faults.ThrowIfAny();
        expiry.Run();
        return TypedResults.Text(BoardTable.Write(boards.ListAll(new BoardFilter()), workshop.Shop().Unit, separator), "text/csv; charset=utf-8");
    }

    public static Results<Created<BoardImportResult>, Ok<BoardImportResult>> Import(
        string text, IQueryCollection query, BoardStore boards, BoardImportStore imports, Workshop workshop)
    {
        var faults = new Faults();
        FieldReader.CheckNames(query, ["again"], faults);
        string? word = query["again"];
        if (word is not (null or "true" or "false"))
        {
            faults.Add("?again", $"'{word}' is not known: give true or false.");
        }

        faults.ThrowIfAny();
        var (shop, catalogue) = workshop.Now();
        var table = BoardTable.Read(text, shop.Unit, catalogue, boards.Find);
        var (added, changed, before) = imports.Import(table.Added, table.Changed, table.Mark, word == "true");
        var result = new BoardImportResult(
            [.. added.Select(board => BoardMapping.ToRecord(board, catalogue))],
            [.. changed.Select(board => BoardMapping.ToRecord(board, catalogue))],
            table.Unchanged,
            before);
        return added.Count > 0 ? TypedResults.Created("/v1/boards", result) : TypedResults.Ok(result);
    }
}
