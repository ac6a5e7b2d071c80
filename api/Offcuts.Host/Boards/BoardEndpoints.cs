using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Documents;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary><c>/v1/boards</c> and <c>/v1/board-imports</c>.</summary>
internal static class BoardEndpoints
{
    private const int MaxImport = 1000;

    public static void MapBoards(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/boards", ["GET", "HEAD"], List);
        app.MapPost("/v1/boards", CreateAsync);
        app.MapMethods("/v1/boards/totals", ["GET", "HEAD"], TotalsEndpoint.Get);
        app.MapMethods("/v1/boards/{id}", ["GET", "HEAD"], Get);
        app.MapPut("/v1/boards/{id}", ReplaceAsync);
        app.MapDelete("/v1/boards/{id}", Delete);
        app.MapPost("/v1/board-imports", ImportAsync);
        app.MapMethods("/v1/board-exports", ["GET", "HEAD"], BoardTableEndpoint.Export);
    }

    private static Ok<BoardPage> List(HttpRequest request, BoardStore boards, Workshop workshop, Expiry expiry)
    {
        expiry.Run();
        var catalogue = workshop.Catalogue();
        var asked = BoardListRequest.Read(request.Query, catalogue);
        var (found, next) = boards.List(asked.Filter, asked.Order, asked.After, asked.Limit);
        return TypedResults.Ok(new BoardPage([.. found.Select(board => BoardMapping.ToRecord(board, catalogue))], QueryReader.Next(request.HttpContext, next?.Sequence, next?.Key)));
    }

    private static async Task<Created<BoardRecord>> CreateAsync(HttpRequest request, BoardStore boards, Workshop workshop, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.BoardEntry, cancellationToken);
        var record = BoardMapping.ToRecord(boards.Add([Checked(entry, "", workshop)])[0], workshop.Catalogue());
        return TypedResults.Created($"/v1/boards/{record.Id}", record);
    }

    private static Ok<BoardRecord> Get(string id, BoardStore boards, Workshop workshop, Expiry expiry)
    {
        expiry.Run();
        return TypedResults.Ok(BoardMapping.ToRecord(boards.Find(Written(id)) ?? throw NoBoard(id), workshop.Catalogue()));
    }

    private static async Task<Ok<BoardRecord>> ReplaceAsync(
        string id, HttpRequest request, BoardStore boards, Workshop workshop, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.BoardEntry, cancellationToken);
        return TypedResults.Ok(BoardMapping.ToRecord(boards.Replace(Checked(entry, Written(id), workshop)) ?? throw NoBoard(id), workshop.Catalogue()));
    }

    private static NoContent Delete(string id, BoardStore boards) =>
        boards.Delete(Written(id)) ? TypedResults.NoContent() : throw NoBoard(id);

    private static async Task<Results<Created<BoardImportResult>, Ok<BoardImportResult>>> ImportAsync(
        HttpRequest request, BoardStore boards, BoardImportStore imports, Workshop workshop, CancellationToken cancellationToken)
    {
        if (RequestBody.IsTable(request))
        {
            return BoardTableEndpoint.Import(await RequestBody.ReadTextAsync(request, cancellationToken), request.Query, boards, imports, workshop);
        }

        var entered = RequestBody.IsDocument(request)
            ? ReadDocument(await RequestBody.ReadTextAsync(request, cancellationToken), workshop)
            : ReadEntries(await RequestBody.ReadAsync(request, WireJson.Default.BoardImport, cancellationToken), workshop);
        var catalogue = workshop.Catalogue();
        var records = boards.Add(entered, JournalKind.Import).Select(board => BoardMapping.ToRecord(board, catalogue)).ToList();
        return TypedResults.Created("/v1/boards", new BoardImportResult(records));
    }

    private static List<Board> ReadDocument(string text, Workshop workshop)
    {
        var (shop, catalogue) = workshop.Now();
        return [.. BoardListDocument.Parse(text, shop.Unit, catalogue).Select(board => board.ToBoard("", default))];
    }

    private static List<Board> ReadEntries(BoardImport import, Workshop workshop)
    {
        var faults = new Faults();
        var catalogue = workshop.Catalogue();
        var entered = faults.Entries("#/items", import.Items, MaxImport, least: 1)
            .Select(item => BoardMapping.ToLogged(item.Entry, "", catalogue, $"#/items/{item.Index}", faults)).ToList();
        faults.ThrowIfAny();
        return entered;
    }

    private static Board Checked(BoardEntry entry, string id, Workshop workshop)
    {
        var faults = new Faults();
        var board = BoardMapping.ToLogged(entry, id, workshop.Catalogue(), "#", faults);
        faults.ThrowIfAny();
        return board;
    }

    // Whoever reads an id from the end grain may type it in small letters.
    internal static string Written(string id) => id.ToUpperInvariant();

    internal static OffcutsException NoBoard(string id) =>
        new(ErrorCode.NotFound, $"There is no board '{id}'. List the boards to see which there are.");
}
