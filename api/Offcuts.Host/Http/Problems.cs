using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Data.Sqlite;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Plans;

namespace Offcuts.Host.Http;

/// <summary>A kind of problem: its slug, status, fixed title and what its page says.</summary>
internal sealed record ProblemKind(string Slug, int Status, string Title, string Page);

/// <summary>A request that HTTP alone refuses.</summary>
internal sealed class RefusedException(int status, string message, int? retryAfterSeconds = null) : Exception(message)
{
    public int? RetryAfterSeconds { get; } = retryAfterSeconds;

    public int Status { get; } = status;
}

/// <summary>Turns every error into problem details (RFC 9457).</summary>
internal static partial class Problems
{
    private static readonly ProblemKind Internal = new(
        "internal", 500, "The service failed", "It is not your fault. Report the traceId; the log has the rest under it.");

    private static readonly ProblemKind Damaged = new(
        "data-integrity", 500, "The database is damaged",
        "What is stored cannot be read as it was written. Stop the service and put a copy of the database back; the log has the rest under the traceId.");

    private static readonly ProblemKind Rejected = new(
        "plan-rejected", 500, "The auditor rejected a plan",
        "Every plan is checked before anyone sees it, and this one broke a rule. It is not your fault. Report it with the reproduction that the failure names, a file in the service's data folder.");

    private static readonly ProblemKind Stopping = new(
        "stopping", 503, "The service is stopping", "What was asked ended with it; nothing of it was kept. Ask again when the service runs.");

    public static IReadOnlyList<ProblemKind> Kinds { get; } =
    [
        new("invalid", 400, "The request cannot be right", "Each entry of errors names a place in the request and how to mend it."),
        new("not-found", 404, "There is no such thing", "Check the path and the id; list the resource to see what there is."),
        new("method-not-allowed", 405, "This method is not for this path", "The Allow header lists the methods that are."),
        new("conflict", 409, "It contradicts what is stored", "Read the resource again and decide anew."),
        new("too-large", 413, "The body is too large", "Send less at once; a body may have 4 MiB."),
        new("unsupported-media-type", 415, "The body is of the wrong type", "Send the Content-Type that the detail names."),
        new("too-many-requests", 429, "Too much is asked at once", "Wait as long as the Retry-After header says and ask again."),
        new("busy", 503, "The database is busy", "Another process holds the database. Wait as long as the Retry-After header says and ask again."),
        new("not-writable", 507, "The database cannot be written", "Make room on the disk that holds the database, or make its folder writable; nothing of the request was kept."),
        Stopping,
        Internal,
        Damaged,
        Rejected,
    ];

    public static void UseProblems(this IApplicationBuilder app)
    {
        var log = app.ApplicationServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(Problems));
        var service = app.ApplicationServices.GetRequiredService<ServiceEnd>();
        app.Use((context, next) => AnswerAsync(context, next, log, service.Stopping));
    }

    public static void MapProblemPages(this IEndpointRouteBuilder app) => app.MapMethods("/problems/{slug}", ["GET", "HEAD"], GetPage);

    private static async Task AnswerAsync(HttpContext context, RequestDelegate next, ILogger log, CancellationToken stopping)
    {
        try
        {
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null })
            {
                await WriteAsync(context, KindOf(context.Response.StatusCode), $"{context.Request.Method} {context.Request.Path} cannot be answered.", []);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested && context is { RequestAborted.IsCancellationRequested: false, Response.HasStarted: false })
        {
            await WriteAsync(context, Stopping, "The service is stopping: ask again when it runs.", []);
        }
        catch (Exception fault)
        {
            var told = Told.Of(fault);
            if (told.Kind == Internal && context.RequestAborted.IsCancellationRequested)
            {
                // Nobody listens any more, and most likely it only says so.
                throw;
            }

            if (told.IsLogged)
            {
                LogFailure(log, fault, context.TraceIdentifier);
            }

            if (told.RetryAfterSeconds is { } seconds)
            {
                context.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            }

            await WriteAsync(context, told.Kind, told.Detail, told.Faults);
        }
    }

    /// <summary>The problem of a fault that comes when the answer has begun already; logged like others if it is for whoever runs the service.</summary>
    public static Problem Of(Exception fault, string traceId, ILogger log)
    {
        var told = Told.Of(fault);
        if (told.IsLogged)
        {
            LogFailure(log, fault, traceId);
        }

        return Of(told.Kind, told.Detail, told.Faults, traceId);
    }

    private static Problem Of(ProblemKind kind, string detail, IReadOnlyList<InputFault> faults, string traceId) => new(
        $"/problems/{kind.Slug}", kind.Title, kind.Status, detail, kind.Slug,
        [.. faults.Select(fault => new ProblemFault(fault.Pointer, fault.Detail, fault.Line, fault.Column))], traceId);

    private static ContentHttpResult GetPage(string slug)
    {
        var kind = Kinds.FirstOrDefault(kind => kind.Slug == slug)
            ?? throw new OffcutsException(ErrorCode.NotFound, $"There is no problem type '{slug}'.");
        return TypedResults.Text($"{kind.Title} ({kind.Status})\n\n{kind.Page}\n");
    }

    // A status without a kind of its own, as the framework may give, is told as the general one of its class.
    private static ProblemKind KindOf(int status) =>
        status == Internal.Status ? Internal : Kinds.FirstOrDefault(kind => kind.Status == status) ?? KindOf(status < 500 ? 400 : 500);

    private static async Task WriteAsync(HttpContext context, ProblemKind kind, string detail, IReadOnlyList<InputFault> faults)
    {
        var problem = Of(kind, detail, faults, context.TraceIdentifier);
        context.Response.StatusCode = kind.Status;
        context.Response.ContentType = "application/problem+json";
        await JsonSerializer.SerializeAsync(context.Response.Body, problem, WireJson.Default.Problem, context.RequestAborted);
    }

    /// <summary>What a fault is told as: the one table from exceptions to problems.</summary>
    /// <param name="Kind">The kind of problem.</param>
    /// <param name="Detail">What is wrong and how to mend it.</param>
    /// <param name="Faults">Where in the request it is.</param>
    /// <param name="RetryAfterSeconds">When to ask again; null where that mends nothing.</param>
    /// <param name="IsLogged">Whether whoever runs the service is to see it.</param>
    private sealed record Told(ProblemKind Kind, string Detail, IReadOnlyList<InputFault> Faults, int? RetryAfterSeconds = null, bool IsLogged = false)
    {
        public static Told Of(Exception fault) => fault switch
        {
            OffcutsException { Code: ErrorCode.Invalid } own => new(KindOf(400), own.Message, own.Faults),
            OffcutsException { Code: ErrorCode.NotFound } own => new(KindOf(404), own.Message, own.Faults),
            OffcutsException { Code: ErrorCode.Conflict } own => new(KindOf(409), own.Message, own.Faults),
            // What is damaged or rejected is nothing that the client could mend.
            OffcutsException { Code: ErrorCode.DataIntegrity } own => new(Damaged, own.Message, own.Faults, IsLogged: true),
            PlanRejectedException rejected => new(Rejected, rejected.Message, [], IsLogged: true),
            SqliteException storage when StorageFaults.Of(storage) is { } refused => Of(refused) with { IsLogged = true },
            SqliteException storage when StorageFaults.IsDamage(storage) =>
                new(Damaged, $"The database is damaged ({storage.Message}): stop the service and put a copy of the file back.", [], IsLogged: true),
            RefusedException refused => new(KindOf(refused.Status), refused.Message, [], refused.RetryAfterSeconds),
            BadHttpRequestException bad => new(KindOf(bad.StatusCode), bad.Message, bad.StatusCode == 400 ? [new("#", bad.Message)] : []),
            _ => new(Internal, "The service failed; the log says why.", [], IsLogged: true),
        };
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {TraceId} failed")]
    private static partial void LogFailure(ILogger logger, Exception failure, string traceId);
}
