using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Journals;

/// <summary><c>/v1/boards/{id}/history</c>.</summary>
internal static class HistoryEndpoints
{
    public static void MapHistory(this IEndpointRouteBuilder app) => app.MapMethods("/v1/boards/{id}/history", ["GET", "HEAD"], Get);

    private static Ok<BoardHistory> Get(string id, HistoryStore history, Workshop workshop)
    {
        var written = BoardEndpoints.Written(id);
        var lines = history.ListOf(written);
        if (lines.Count == 0)
        {
            throw BoardEndpoints.NoBoard(id);
        }

        var (shop, catalogue) = workshop.Now();
        var words = new HistoryText(shop.Unit, catalogue.NameOf);
        var items = lines.Index().Select(line => ToRecord(line.Item, line.Index == 0 ? null : lines[line.Index - 1].After, words, catalogue)).ToList();
        return TypedResults.Ok(new BoardHistory(
            written, lines.Select(line => line.After?.Origin?.CutFrom).LastOrDefault(parent => parent is not null),
            [.. lines.Where(line => line.Line.UndoneBy is null).SelectMany(line => CutsOf(line, written)).SelectMany(cut => cut.Leftovers)], items));
    }

    private static HistoryRecord ToRecord(HistoryLine line, Board? before, HistoryText words, SpeciesCatalogue catalogue) => new(
        line.Line.Line, line.Line.At, Words.Of(line.Line.Kind), Text(line, before, words), line.Line.PlanId, line.Line.UndoneBy,
        line.After is { } board ? BoardMapping.ToRecord(board, catalogue) : null);

    private static string Text(HistoryLine line, Board? before, HistoryText words) => (line.Line.Kind, line.After) switch
    {
        (JournalKind.Opening, { } board) => $"on the rack before the journal: {words.Logged(board)}",
        (JournalKind.Log or JournalKind.Import, { } board) => $"logged{Within(line)}: {words.Logged(board)}",
        (JournalKind.Edit, { } board) when before is not null => $"changed{Within(line)}: {words.Edited(before, board)}",
        (JournalKind.Delete, _) => "forgotten",
        (JournalKind.Accept, { } board) => $"held by plan {line.Line.PlanId} as board {Numbers(board, before, line.Line.PlanId)} of it",
        (JournalKind.Release, _) => $"given back by plan {line.Line.PlanId}",
        (JournalKind.Expire, _) => $"given back by plan {line.Line.PlanId}, because its time was over",
        (JournalKind.Close, { } board) => CutsOf(line, board.Id) is { Count: > 0 } cuts
            ? HistoryText.Cut(cuts, board)
            : $"left over from board {board.Origin?.CutFrom}: {words.Logged(board)}",
        (JournalKind.Undo, _) => FormattableString.Invariant($"line {line.Line.Undoes} was taken back"),
        _ => Words.Of(line.Line.Kind),
    };

    private static string Within(HistoryLine line) => line.Line.StockTake is { } number ? FormattableString.Invariant($" in stock-take {number}") : "";

    // A build tells all its cuts; those of this line have its time.
    private static List<ClosedBoard> CutsOf(HistoryLine line, string id) => line.Line.Kind != JournalKind.Close ? []
        : [.. (line.Build?.Closed ?? []).Where(cut => cut.BoardId == id && cut.At == line.Line.At)];

    private static string Numbers(Board board, Board? before, string? planId) => string.Join(
        " and ", board.Holds.Where(hold => hold.PlanId == planId && before?.Holds.Contains(hold) != true).Select(hold => FormattableString.Invariant($"{hold.Number}")));
}
