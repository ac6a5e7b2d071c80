using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
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
    }

    private static Ok<JournalPage> List(HttpRequest request, JournalStore journal)
    {
        var (before, limit) = new QueryReader(request.Query).Page();
        var (lines, next) = journal.List(before, limit);
        return TypedResults.Ok(new JournalPage([.. lines.Select(JournalMapping.ToRecord)], QueryReader.Next(request.HttpContext, next)));
    }

    private static Ok<JournalCheckRecord> Check(JournalStore journal) => TypedResults.Ok(JournalMapping.ToRecord(journal.Check()));
}
