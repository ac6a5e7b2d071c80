using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary><c>/v1/board-lines</c>: boards as a maker says them.</summary>
internal static class BoardLineEndpoints
{
    private const int MaxLines = 1000;

    public static void MapBoardLines(this IEndpointRouteBuilder app) => app.MapPost("/v1/board-lines", ReadAsync);

    private static async Task<Results<Created<BoardLinesResult>, Ok<BoardLinesResult>>> ReadAsync(
        HttpRequest request, SpokenLines spokenLines, BoardStore boards, Workshop workshop, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.BoardLinesEntry, cancellationToken);
        var (shop, catalogue) = workshop.Now();
        var lines = entry.Text.ReplaceLineEndings("\n").Split('\n');
        var carry = CarryOf(entry, lines.Length, catalogue);
        var readings = spokenLines.Read(lines, carry, shop, catalogue);
        var spoken = readings.Index().Where(reading => reading.Item.Understood is not null || reading.Item.Faults.Count > 0)
            .Select(reading => (Line: reading.Index + 1, Reading: reading.Item)).ToList();
        var next = BoardLineMapping.ToRecord(readings.Count == 0 ? carry : readings[^1].Carry);
        if (entry.DryRun)
        {
            return TypedResults.Ok(new BoardLinesResult(false, [.. spoken.Select(line => BoardLineMapping.ToRecord(line.Line, line.Reading, null))], next));
        }

        ThrowIfAny(spoken);
        var logged = Log([.. spoken.Select(line => line.Reading.Board).OfType<NewBoard>()], boards);
        return TypedResults.Created("/v1/boards", new BoardLinesResult(
            true,
            [.. spoken.Select(line => BoardLineMapping.ToRecord(
                line.Line, line.Reading, line.Reading.Board is null ? null : BoardMapping.ToRecord(logged.Dequeue(), catalogue)))],
            next));
    }

    private static Queue<Board> Log(IReadOnlyList<NewBoard> said, BoardStore boards) => said.Count == 0 ? new() : new(boards.Add(
        [.. said.Select(board => board.ToBoard("", default))], said.Count == 1 ? JournalKind.Log : JournalKind.Import));

    private static QuickCarry CarryOf(BoardLinesEntry entry, int lines, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        if (lines > MaxLines)
        {
            faults.Add("#/text", FormattableString.Invariant($"There are {lines} lines: give at most {MaxLines}, and the others with another request."));
        }

        var carry = BoardLineMapping.ToCarry(entry.Carry, catalogue, faults);
        faults.ThrowIfAny();
        return carry;
    }

    private static void ThrowIfAny(IReadOnlyList<(int Line, QuickReading Reading)> lines)
    {
        var faults = lines.SelectMany(line => line.Reading.Faults.Select(fault => new InputFault("#/text", fault.Detail, line.Line, fault.Column))).ToList();
        if (faults.Count > 0)
        {
            throw new OffcutsException(ErrorCode.Invalid, "Not every line is understood, and nothing was logged: see errors.", faults);
        }
    }
}
