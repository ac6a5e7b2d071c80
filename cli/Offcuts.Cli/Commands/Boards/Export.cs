using System.CommandLine;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards export</c>.</summary>
internal static class Export
{
    private const string ByteOrderMark = "\uFEFF";

    private static readonly Option<string> Output = new("--output", "-o") { Description = "Write to a file, marked as UTF-8 for spreadsheets; standard output if left out", HelpName = "FILE" };
    private static readonly Option<bool> Semicolon = new("--semicolon") { Description = "Semicolons between cells and commas in numbers, as many spreadsheets want it" };

    public static Verb Create() => new Verb(
        "export",
        "Write all boards as a table for spreadsheets (see 'offcuts help board-tables')",
        "offcuts boards export -o rack.csv",
        "offcuts boards export --semicolon -o rack.csv").With(Output, Semicolon).Does(ExportAsync);

    private static async Task<int> ExportAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var table = await api.ExportBoardsAsync(run.Get(Semicolon) ? "semicolon" : null, run.Cancellation);
        await Files.WriteOrPrintAsync(run, run.Get(Output), run.Get(Output) is null or "-" ? table : ByteOrderMark + table);
        return ExitCode.Ok;
    }
}
