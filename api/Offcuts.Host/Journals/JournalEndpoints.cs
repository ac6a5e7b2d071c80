using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Journals;

/// <summary><c>/v1/journal</c>.</summary>
internal static class JournalEndpoints
{
    public static void MapJournal(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/journal", ["GET", "HEAD"], List);
        app.MapMethods("/v1/journal/check", ["GET", "HEAD"], Check);
        app.MapPost("/v1/journal/{line}/undo", Undo);
    }

    private static Ok<JournalPage> List(HttpRequest request, JournalStore journal)
    {
        var (before, limit) = new QueryReader(request.Query).Page();
        var (lines, next) = journal.List(before, limit);
        return TypedResults.Ok(new JournalPage([.. lines.Select(JournalMapping.ToRecord)], QueryReader.Next(request.HttpContext, next)));
    }

    private static Ok<JournalCheckRecord> Check(JournalStore journal) => TypedResults.Ok(JournalMapping.ToRecord(journal.Check()));

    private static Ok<JournalLineRecord> Undo(string line, UndoStore undo, JournalStore journal) =>
        long.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && undo.Undo(number) is { } done
            ? TypedResults.Ok(JournalMapping.ToRecord(journal.List(done + 1, 1).Lines[0]))
            : throw new OffcutsException(ErrorCode.NotFound, $"There is no line '{line}' in the journal. List it to see which there are.");
}
