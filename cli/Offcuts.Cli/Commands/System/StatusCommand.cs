using System.Text.Json.Serialization;

namespace Offcuts.Cli.Commands;

/// <summary><c>offcuts status</c>.</summary>
internal static class StatusCommand
{
    public static Verb Create() => new Verb(
        "status", "Say which server or store is used, and why", "offcuts status", "offcuts status --server http://127.0.0.1:5080").Does(StatusAsync);

    private static async Task<int> StatusAsync(Run run)
    {
        var choice = run.Choice;
        var health = await (await run.ConnectAsync()).GetHealthAsync(run.Cancellation);
        var status = new Status(
            choice.Server is null ? "embedded" : "server", choice.Server?.ToString().TrimEnd('/'), choice.DatabasePath, choice.Reason,
            health.Version, CommandLine.Version());
        if (run.Json)
        {
            run.WriteJson(status, StatusJson.Default.Status);
            return ExitCode.Ok;
        }

        run.Terminal.Out.WriteLine(choice.Server is null
            ? $"Store:           {choice.DatabasePath}, hosted by this command"
            : $"Server:          {status.Server}");
        run.Terminal.Out.WriteLine($"Because:         {choice.Reason}");
        run.Terminal.Out.WriteLine($"API version:     {SafeText.Of(health.Version)}");
        run.Terminal.Out.WriteLine($"Program version: {status.ProgramVersion}");
        return ExitCode.Ok;
    }
}

/// <summary>What <c>offcuts status --json</c> writes.</summary>
internal sealed record Status(string Mode, string? Server, string? Database, string Reason, string ApiVersion, string ProgramVersion);

/// <summary>JSON of <see cref="Status"/>.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(Status))]
internal sealed partial class StatusJson : JsonSerializerContext;
