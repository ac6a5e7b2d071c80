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
        new("internal", 500, "The service failed", "It is not your fault. Report the traceId; the log has the rest under it."),
        new("plan-rejected", 500, "The auditor rejected a plan", "Every plan is checked before anyone sees it, and this one broke a rule. It is not your fault. Report it with the reproduction that the failure names, a file in the service's data folder."),
    ];

    public static void UseProblems(this WebApplication app) => app.Use(async (context, next) =>
    {
        try
        {
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null })
            {
                await WriteAsync(context, context.Response.StatusCode, $"{context.Request.Method} {context.Request.Path} cannot be answered.", []);
            }
        }
        catch (OffcutsException fault)
        {
            var status = StatusOf(fault.Code);
            if (status == 500)
            {
                LogFailure(app.Logger, fault, context.TraceIdentifier);
            }

            await WriteAsync(context, status, fault.Message, fault.Faults);
        }
        catch (SqliteException fault) when (StorageFaults.Of(fault) is { } refused)
        {
            LogFailure(app.Logger, fault, context.TraceIdentifier);
            context.Response.Headers.RetryAfter = refused.RetryAfterSeconds?.ToString(CultureInfo.InvariantCulture);
            await WriteAsync(context, refused.Status, refused.Message, []);
        }
        catch (RefusedException refused)
        {
            if (refused.RetryAfterSeconds is { } seconds)
            {
                context.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
            }

            await WriteAsync(context, refused.Status, refused.Message, []);
        }
        catch (BadHttpRequestException bad)
        {
            await WriteAsync(context, bad.StatusCode, bad.Message, bad.StatusCode == 400 ? [new("#", bad.Message)] : []);
        }
        catch (Exception failure) when (!context.RequestAborted.IsCancellationRequested)
        {
            LogFailure(app.Logger, failure, context.TraceIdentifier);
            await WriteAsync(context, 500, "The service failed; the log says why.", []);
        }
    });

    public static void MapProblemPages(this WebApplication app) => app.MapMethods("/problems/{slug}", ["GET", "HEAD"], GetPage);

    private static ContentHttpResult GetPage(string slug)
    {
        var kind = Kinds.FirstOrDefault(kind => kind.Slug == slug)
            ?? throw new OffcutsException(ErrorCode.NotFound, $"There is no problem type '{slug}'.");
        return TypedResults.Text($"{kind.Title} ({kind.Status})\n\n{kind.Page}\n");
    }

    // PlanRejected and DataIntegrity are the product's own faults, so nothing the client could mend.
    internal static int StatusOf(ErrorCode code) => code switch
    {
        ErrorCode.Invalid => 400,
        ErrorCode.NotFound => 404,
        ErrorCode.Conflict => 409,
        ErrorCode.PlanRejected or ErrorCode.DataIntegrity => 500,
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "Not an error code."),
    };

    private static async Task WriteAsync(HttpContext context, int status, string detail, IReadOnlyList<InputFault> faults)
    {
        var kind = Kinds.FirstOrDefault(kind => kind.Status == status) ?? Kinds.First(kind => kind.Status == (status < 500 ? 400 : 500));
        var problem = new Problem(
            $"/problems/{kind.Slug}", kind.Title, kind.Status, detail, kind.Slug,
            [.. faults.Select(fault => new ProblemFault(fault.Pointer, fault.Detail, fault.Line))], context.TraceIdentifier);
        context.Response.StatusCode = kind.Status;
        context.Response.ContentType = "application/problem+json";
        await JsonSerializer.SerializeAsync(context.Response.Body, problem, WireJson.Default.Problem, context.RequestAborted);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Request {TraceId} failed")]
    private static partial void LogFailure(ILogger logger, Exception failure, string traceId);
}
