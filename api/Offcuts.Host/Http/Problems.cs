using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Data.Sqlite;
using Offcuts.Contracts;
using Offcuts.Domain;

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
        Internal,
        Damaged,
        new("plan-rejected", 500, "The auditor rejected a plan", "Every plan is checked before anyone sees it, and this one broke a rule. It is not your fault. Report it with the reproduction that the failure names, a file in the service's data folder."),
    ];

    public static void UseProblems(this IApplicationBuilder app)
    {
        var log = app.ApplicationServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(Problems));
        app.Use((context, next) => AnswerAsync(context, next, log));
    }

    public static void MapProblemPages(this IEndpointRouteBuilder app) => app.MapMethods("/problems/{slug}", ["GET", "HEAD"], GetPage);

    private static async Task AnswerAsync(HttpContext context, RequestDelegate next, ILogger log)
    {
        try
        {
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null })
            {
                await WriteAsync(context, KindOf(context.Response.StatusCode), $"{context.Request.Method} {context.Request.Path} cannot be answered.", []);
            }
        }
        catch (OffcutsException fault)
        {
            var kind = KindOf(fault.Code);
            if (kind.Status == 500)
            {
                LogFailure(log, fault, context.TraceIdentifier);
            }

            await WriteAsync(context, kind, fault.Message, fault.Faults);
        }
        catch (SqliteException fault) when (StorageFaults.Of(fault) is { } refused)
        {
            LogFailure(log, fault, context.TraceIdentifier);
            context.Response.Headers.RetryAfter = refused.RetryAfterSeconds?.ToString(CultureInfo.InvariantCulture);
            await WriteAsync(context, KindOf(refused.Status), refused.Message, []);
        }
        catch (SqliteException fault) when (StorageFaults.IsDamage(fault))
        {
            LogFailure(log, fault, context.TraceIdentifier);
            await WriteAsync(context, Damaged, $"The database is damaged ({fault.Message}): stop the service and put a copy of the file back.", []);
        }
        catch (RefusedException refused)
        {
            if (refused.RetryAfterSeconds is { } seconds)
            {
                context.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            }

            await WriteAsync(context, KindOf(refused.Status), refused.Message, []);
        }
        catch (BadHttpRequestException bad)
        {
            await WriteAsync(context, KindOf(bad.StatusCode), bad.Message, bad.StatusCode == 400 ? [new("#", bad.Message)] : []);
        }
        catch (Exception failure) when (!context.RequestAborted.IsCancellationRequested)
        {
            LogFailure(log, failure, context.TraceIdentifier);
            await WriteAsync(context, Internal, "The service failed; the log says why.", []);
        }
    }

    /// <summary>The problem of a fault that comes when the answer has begun already.</summary>
    public static Problem Of(Exception fault, string traceId) => fault switch
    {
        OffcutsException own => Of(KindOf(own.Code), own.Message, own.Faults, traceId),
        SqliteException storage when StorageFaults.Of(storage) is { } refused => Of(KindOf(refused.Status), refused.Message, [], traceId),
        SqliteException storage when StorageFaults.IsDamage(storage) => Of(Damaged, Damaged.Page, [], traceId),
        _ => Of(Internal, "The service failed; the log says why.", [], traceId),
    };

    private static Problem Of(ProblemKind kind, string detail, IReadOnlyList<InputFault> faults, string traceId) => new(
        $"/problems/{kind.Slug}", kind.Title, kind.Status, detail, kind.Slug,
        [.. faults.Select(fault => new ProblemFault(fault.Pointer, fault.Detail, fault.Line, fault.Column))], traceId);

    private static ContentHttpResult GetPage(string slug)
    {
        var kind = Kinds.FirstOrDefault(kind => kind.Slug == slug)
            ?? throw new OffcutsException(ErrorCode.NotFound, $"There is no problem type '{slug}'.");
        return TypedResults.Text($"{kind.Title} ({kind.Status})\n\n{kind.Page}\n");
    }

    // PlanRejected and DataIntegrity are the product's own faults, so nothing the client could mend.
    private static ProblemKind KindOf(ErrorCode code) => code switch
    {
        ErrorCode.Invalid => KindOf(400),
        ErrorCode.NotFound => KindOf(404),
        ErrorCode.Conflict => KindOf(409),
        ErrorCode.PlanRejected => Internal,
        ErrorCode.DataIntegrity => Damaged,
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "Not an error code."),
    };

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

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {TraceId} failed")]
    private static partial void LogFailure(ILogger logger, Exception failure, string traceId);
}
