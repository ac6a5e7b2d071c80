using System.CommandLine;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;
using Refit;

namespace Offcuts.Cli;

/// <summary>Turns whatever went wrong into a <see cref="Fault"/> and tells it on standard error.</summary>
internal static class FaultReport
{
    /// <summary>Tells a fault and returns the exit code.</summary>
    public static int Tell(Fault fault, Terminal terminal, bool json)
    {
        if (json)
        {
            terminal.Err.WriteLine(JsonSerializer.Serialize(fault, FaultJson.Default.Fault));
        }
        else
        {
            var label = terminal.ColourErr ? "\u001b[31merror:\u001b[0m" : "error:";
            terminal.Err.WriteLine($"{label} {SafeText.Of(fault.Message)}");
        }

        return fault.ExitCode;
    }

    /// <summary>The fault that an exception means.</summary>
    /// <param name="exception">What was thrown.</param>
    /// <param name="signals">What may have stopped it.</param>
    /// <param name="command">The command whose options it is told by.</param>
    public static Fault Of(Exception exception, Signals signals, Command command) => exception switch
    {
        CliException cli => new(cli.Code, cli.Message),
        OffcutsException own => new(CodeOf(own.Code), Joined(own.Message, [.. own.Faults.Select(fault => Line(FaultNames.InDocument(fault.Pointer, fault.Line), fault.Detail, fault.Line))])),
        ApiException answer => Of(answer, command),
        ProblemException told => Of(told.Problem, "", fault => FaultNames.OnCommandLine(fault.Pointer, command)),
        OperationCanceledException when signals.ExitedBy is { } code =>
            new(code == ExitCode.Terminated ? "terminated" : "interrupted", "Stopped before it was done; nothing further was changed."),
        OperationCanceledException => new("unreachable", "The server did not answer in time. Try again, or see 'offcuts status'."),
        ApiRequestException { InnerException: { } inner } => Of(inner, signals, command),
        HttpRequestException { InnerException: SocketException or IOException or null } unreachable =>
            new("unreachable", $"The server cannot be reached ({unreachable.Message}). Check OFFCUTS_URL or --server, or unset them to use the store on this machine."),
        HttpRequestException other => Of(other.InnerException!, signals, command),
        UnauthorizedAccessException or IOException => new("failed", exception.Message),
        _ => Unexpected(exception),
    };

    private static Fault Of(ApiException answer, Command command)
    {
        if (ProblemIn(answer) is { } problem)
        {
            return Of(problem, NameOf(answer), fault => Named(fault, answer, command));
        }

        var asked = answer.RequestMessage.RequestUri!;
        if (answer.StatusCode == HttpStatusCode.NotFound)
        {
            return new("failed", $"{asked.GetLeftPart(UriPartial.Authority)} answers but does not know {asked.AbsolutePath}: it is no Offcuts server. Give the address of one with OFFCUTS_URL or --server, or unset them to use the store on this machine.");
        }

        return answer.InnerException is JsonException
            ? new("failed", "The server's answer cannot be read: it may be of another version. Compare 'offcuts --version' and 'offcuts status'.")
            : new("failed", string.Create(CultureInfo.InvariantCulture, $"The server answered {(int)answer.StatusCode} to {asked} without saying why. Is it an Offcuts server? Check OFFCUTS_URL or --server."));
    }

    private static Fault Of(Problem problem, string document, Func<ProblemFault, string> named) => new(
        problem.Type, problem.Code,
        document + Joined(problem.Detail, [.. problem.Errors.Select(fault => Line(named(fault), fault.Detail, fault.Line, fault.Column))]), ExitCode.Of(problem.Code));

    // A fault of a document is found by its file, then by its line.
    private static string NameOf(ApiException answer) =>
        answer.RequestMessage.Content is DocumentContent { Name: not "-" } document ? $"{document.Name}: " : "";

    /// <summary>The problem that an answer tells; null if it tells none.</summary>
    public static Problem? ProblemIn(ApiException answer) => answer.Content is { } content ? ReadProblem(content) : null;

    private static Problem? ReadProblem(string content)
    {
        try
        {
            return JsonSerializer.Deserialize(content, ClientJson.Default.Problem) is { Code: not null, Detail: not null, Errors: not null } problem ? problem : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Named(ProblemFault fault, ApiException answer, Command command) =>
        answer.RequestMessage.Content is DocumentContent ? FaultNames.InDocument(fault.Pointer, fault.Line)
        : answer.RequestMessage.RequestUri?.AbsolutePath == "/v1/shop" ? FaultNames.OfSetting(fault.Pointer)
        : FaultNames.OnCommandLine(fault.Pointer, command);

    // The general message matters only where no place is named.
    private static string Joined(string message, IReadOnlyList<string> faults) =>
        faults.Count == 0 ? message : string.Join(" | ", faults);

    private static string Line(string place, string detail, int? line, int? column = null)
    {
        var at = line is { } number ? string.Create(CultureInfo.InvariantCulture, $"line {number}{(column is { } sign ? $", column {sign}" : "")}") : null;
        var where = string.Join(", ", new[] { at, place.Length > 0 ? place : null }.OfType<string>());
        return where.Length > 0 ? $"{where}: {detail}" : detail;
    }

    private static string CodeOf(ErrorCode code) => code switch
    {
        ErrorCode.Invalid => "invalid",
        ErrorCode.NotFound => "not-found",
        ErrorCode.Conflict => "conflict",
        ErrorCode.DataIntegrity => "data-integrity",
    };

    // The stack goes to a file: it helps whoever mends the program, not the person who was stopped by it.
    private static Fault Unexpected(Exception exception)
    {
        var log = Path.Combine(Path.GetTempPath(), string.Create(CultureInfo.InvariantCulture, $"offcuts-failure-{Environment.ProcessId}.log"));
        File.WriteAllText(log, exception.ToString());
        return new("internal", $"A fault in this program: {exception.Message} Please report it with {log}.");
    }
}
