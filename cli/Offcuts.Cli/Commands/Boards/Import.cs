using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards import</c>.</summary>
internal static class Import
{
    private static readonly Argument<string> File = Documents.Argument("A board list");

    public static Verb Create() => new Verb(
        "import",
        "Log many boards from a file, all or none",
        "offcuts boards import rack.yaml",
        "generate-list | offcuts boards import -")
        .With(File).Does(ImportAsync);

    private static async Task<int> ImportAsync(Run run)
    {
        var api = await run.ConnectAsync();
        using var document = await Documents.ReadAsync(run, run.Get(File));
        var result = await api.ImportBoardDocumentAsync(document, run.Cancellation);
        DefectNotes.Say(run, result.Items.SelectMany(board => board.Defects).Select(defect => defect.Kind));
        if (run.Json)
        {
            run.WriteJson(result, ClientJson.Default.BoardImportResult);
            return ExitCode.Ok;
        }

        BoardView.WriteTable(result.Items, await run.UnitAsync(), run.Terminal);
        run.Say(string.Create(CultureInfo.InvariantCulture, $"Logged {result.Items.Count} boards. Write the ids on their end grain."));
        return ExitCode.Ok;
    }
}
