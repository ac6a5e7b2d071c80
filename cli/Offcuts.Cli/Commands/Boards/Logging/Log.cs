using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards log</c>.</summary>
internal static class Log
{
    private static readonly Argument<string[]> Line = new("LINE")
    {
        Description = "One line as you would say it; left out at a terminal, it asks for line after line",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private static readonly Option<string> File = new("--file") { Description = "Read the lines from a file, all or none; - for standard input", HelpName = "FILE" };

    public static Verb Create() => new Verb(
        "log",
        "Log boards as you would say them, one line each (see 'offcuts help quick-lines')",
        "offcuts boards log 3 @ 3/4 x 5 1/2 x 36 ash",
        "offcuts boards log \"4/4 rough x 7 x ~62 walnut, split 3in end, rack 2\"",
        "offcuts boards log --dry-run 5/4 x 4 x 30 wh oak, lot 7",
        "offcuts boards log --file pile.txt",
        "offcuts boards log")
        .With(Line, File, BoardOptions.DryRun).Begins().Does(LogAsync);

    private static async Task<int> LogAsync(Run run)
    {
        var words = run.Get(Line);
        if (words.Length > 0 && run.Get(File) is not null)
        {
            throw CliException.Usage("Give a line or --file, not both.");
        }

        if (words.Length > 0)
        {
            return await LogAsync(run, string.Join(' ', words));
        }

        if (run.Get(File) is null && run.Terminal.InIsTerminal)
        {
            return run.Get(Globals.NoInput) || run.Json
                ? throw CliException.Usage("Nobody is to be asked here: give a line, or a file with --file.")
                : await new LogSession(run).RunAsync();
        }

        return await LogAsync(run, await Documents.TextAsync(run, run.Get(File) ?? "-"));
    }

    private static async Task<int> LogAsync(Run run, string text)
    {
        var api = await run.ConnectAsync();
        var isDry = run.Get(BoardOptions.DryRun);
        BoardLinesResult result;
        try
        {
            result = await api.LogLinesAsync(new BoardLinesEntry(text, isDry), run.Cancellation);
        }
        catch (ApiException refused) when (!run.Json && FaultReport.ProblemIn(refused)?.Errors is { Count: > 0 } faults && faults.All(fault => fault is { Line: not null, Column: not null }))
        {
            LineView.WriteFaults(text, faults.Select(fault => (fault.Line!.Value, new LineFault(fault.Column!.Value, fault.Detail))), run.Terminal);
            throw CliException.Invalid($"{Lines(faults.Select(fault => fault.Line).Distinct().Count())} not understood: nothing was logged. See 'offcuts help quick-lines'.");
        }

        if (run.Json)
        {
            run.WriteJson(result, ClientJson.Default.BoardLinesResult);
            return result.Lines.Any(line => line.Faults.Count > 0) ? ExitCode.Usage : ExitCode.Ok;
        }

        LineView.Write(result, text, run.Terminal);
        if (isDry)
        {
            run.Say("Nothing was logged (--dry-run).");
            return result.Lines.Any(line => line.Faults.Count > 0) ? ExitCode.Usage : ExitCode.Ok;
        }

        run.Say(result.Lines.Any(line => line.Board is not null) ? "Write the ids on their end grain." : "No line names a board: nothing was logged.");
        return ExitCode.Ok;
    }

    private static string Lines(int count) => count == 1 ? "1 line is" : string.Create(CultureInfo.InvariantCulture, $"{count} lines are");
}
