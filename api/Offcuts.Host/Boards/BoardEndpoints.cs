using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary><c>/v1/boards</c> and <c>/v1/board-imports</c>.</summary>
internal static class BoardEndpoints
{
    private const int MaxImport = 1000;

    public static void MapBoards(this WebApplication app)
    {
        app.MapMethods("/v1/boards", ["GET", "HEAD"], List);
        app.MapPost("/v1/boards", CreateAsync);
        app.MapMethods("/v1/boards/{id}", ["GET", "HEAD"], Get);
        app.MapPut("/v1/boards/{id}", ReplaceAsync);
        app.MapDelete("/v1/boards/{id}", Delete);
        app.MapPost("/v1/board-imports", ImportAsync);
    }

    private static Ok<BoardPage> List(HttpRequest request, HttpResponse response, BoardStore boards)
    {
        var asked = BoardListRequest.Read(request.Query);
        var (found, next) = boards.List(asked.Filter, asked.After, asked.Limit);
        var cursor = next is { } place ? Cursor.Of(place) : null;
        if (cursor is not null)
        {
            var others = request.Query.Where(pair => pair.Key != "cursor").Select(pair => KeyValuePair.Create(pair.Key, pair.Value[0]));
            response.Headers.Link = $"<{request.Path}{QueryString.Create([.. others, new("cursor", cursor)])}>; rel=\"next\"";
        }

        return TypedResults.Ok(new BoardPage([.. found.Select(BoardMapping.ToRecord)], cursor));
    }

    private static async Task<Created<BoardRecord>> CreateAsync(HttpRequest request, BoardStore boards, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.BoardEntry, cancellationToken);
        var record = BoardMapping.ToRecord(boards.Add([Checked(entry, "")])[0]);
        return TypedResults.Created($"/v1/boards/{record.Id}", record);
    }

    private static Ok<BoardRecord> Get(string id, BoardStore boards) =>
        TypedResults.Ok(BoardMapping.ToRecord(boards.Find(id) ?? throw NoBoard(id)));

    private static async Task<Ok<BoardRecord>> ReplaceAsync(
        string id, HttpRequest request, BoardStore boards, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.BoardEntry, cancellationToken);
        return TypedResults.Ok(BoardMapping.ToRecord(boards.Replace(Checked(entry, id)) ?? throw NoBoard(id)));
    }

    private static NoContent Delete(string id, BoardStore boards) =>
        boards.Delete(id) ? TypedResults.NoContent() : throw NoBoard(id);

    private static async Task<Created<BoardImportResult>> ImportAsync(
        HttpRequest request, BoardStore boards, CancellationToken cancellationToken)
    {
        var import = await RequestBody.ReadAsync(request, WireJson.Default.BoardImport, cancellationToken);
        var faults = new Faults();
        if (import.Items.Count is < 1 or > MaxImport)
        {
            faults.Add("#/items", $"There are {import.Items.Count} boards: give 1 to {MaxImport} at once.");
        }

        foreach (var (index, entry) in import.Items.Index())
        {
            // The serialiser checks members for null but not the entries of a list.
            if (entry is null)
            {
                faults.Add($"#/items/{index}", "It is null: give a board or leave it out.");
            }
        }

        faults.ThrowIfAny();
        var entered = import.Items.Select((entry, index) => BoardMapping.ToBoard(entry, "", $"#/items/{index}", faults)).ToList();
        faults.ThrowIfAny();
        var records = boards.Add(entered).Select(BoardMapping.ToRecord).ToList();
        return TypedResults.Created("/v1/boards", new BoardImportResult(records));
    }

    private static Board Checked(BoardEntry entry, string id)
    {
        var faults = new Faults();
        var board = BoardMapping.ToBoard(entry, id, "#", faults);
        faults.ThrowIfAny();
        return board;
    }

    private static OffcutsException NoBoard(string id) =>
        new(ErrorCode.NotFound, $"There is no board '{id}'. List the boards to see which there are.");
}
