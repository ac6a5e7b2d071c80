using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Offcuts.Cli.Tests;

// The built program, run as a process of its own with its own store.
public sealed partial class Program : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(40);
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("offcuts-cli-tests-");

    public string Folder => folder.FullName;

    public string Store => Path.Combine(Folder, "data", "offcuts", "offcuts.db");

    public void Dispose() => folder.Delete(recursive: true);

    public Task<Outcome> RunAsync(params string[] args) => RunAsync(args, null, null);

    public async Task<Outcome> RunAsync(string[] args, string? input, Dictionary<string, string?>? environment)
    {
        using var process = Start(args, environment);
        if (input is not null)
        {
            await process.StandardInput.WriteAsync(input);
        }

        process.StandardInput.Close();
        return await FinishAsync(process);
    }

    public Process Start(string[] args, Dictionary<string, string?>? environment = null) =>
        Start(Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "offcuts.exe" : "offcuts"), args, environment);

    public Process Start(string file, string[] args, Dictionary<string, string?>? environment = null)
    {
        var start = new ProcessStartInfo(file, args)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Folder,
        };
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("OFFCUTS_", StringComparison.Ordinal)).ToList())
        {
            start.Environment.Remove(name);
        }

        start.Environment.Remove("NO_COLOR");
        start.Environment["XDG_DATA_HOME"] = Path.Combine(Folder, "data");
        start.Environment["TERM"] = "xterm-256color";

        // Hundreds of short commands: they start a fifth sooner with loops compiled quickly first.
        start.Environment["DOTNET_TC_QuickJitForLoops"] = "1";
        start.Environment["OFFCUTS_PROGRAM"] = Path.Combine(AppContext.BaseDirectory, "offcuts");
        foreach (var (name, value) in environment ?? [])
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    // A server on a free port, and the address that it says it serves at.
    public async Task<(Process Server, string Address)> ServeAsync(params string[] options)
    {
        var server = Start(["serve", "--urls", "http://127.0.0.1:0", .. options]);
        var line = await server.StandardError.ReadLineAsync().WaitAsync(Patience) ?? "";
        var address = ServedAt().Match(line);
        return address.Success ? (server, address.Value) : throw new InvalidOperationException($"It does not serve: {line}");
    }

    public static async Task<Outcome> FinishAsync(Process process)
    {
        using var patience = new CancellationTokenSource(Patience);
        var output = process.StandardOutput.ReadToEndAsync(patience.Token);
        var error = process.StandardError.ReadToEndAsync(patience.Token);
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return new Outcome(process.ExitCode, await output, await error);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException("The program did not end.");
        }
    }

    [GeneratedRegex("http://127[0-9.:]+")]
    private static partial Regex ServedAt();
}

public sealed record Outcome(int Code, string Out, string Err);
