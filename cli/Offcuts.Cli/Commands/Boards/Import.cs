using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards import</c>.</summary>
internal static class Import
{
    private static readonly Argument<string> File = new("FILE") { Description = "A board list, YAML or JSON, or a table (.csv); - for standard input" };
    private static readonly Option<bool> Csv = new("--csv") { Description = "It is a table, whatever the file is called" };
    private static readonly Option<bool> Again = new("--again") { Description = "Log the new boards of a table though the same were imported before" };

    public static Verb Create() => new Verb(
        "import",
        "Log many boards from a file, all or none; a table also changes boards by their ids",
        "offcuts boards import rack.yaml",
        "offcuts boards import rack.csv",
        "generate-list | offcuts boards import -")
        .With(File, Csv, Again).Begins().Does(ImportAsync);

    private static async Task<int> ImportAsync(Run run)
    {
        var isTable = run.Get(Csv) || run.Get(File).EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
        if (run.Get(Again) && !isTable)
        {
            throw CliException.Usage($"{Again.Name} is for tables: name a .csv file, or give {Csv.Name}.");
        }

        var api = await run.ConnectAsync();
        using var document = isTable
            ? Documents.Table(await Documents.TextAsync(run, run.Get(File)), run.Get(File))
            : await Documents.ReadAsync(run, run.Get(File));
        var result = await api.ImportBoardDocumentAsync(document, run.Get(Again) ? "true" : null, run.Cancellation);
        IReadOnlyList<BoardRecord> touched = [.. result.Items, .. result.Changed ?? []];
        DefectNotes.Say(run, touched.SelectMany(board => board.Defects).Select(defect => defect.Kind));
        if (run.Json)
        {
            run.WriteJson(result, ClientJson.Default.BoardImportResult);
            return ExitCode.Ok;
        }

        if (touched.Count > 0)
        {
            BoardView.WriteTable(touched, await run.UnitAsync(), run.Terminal);
        }

        run.Say(Said(result));
        return ExitCode.Ok;
    }

    private static string Said(BoardImportResult result)
    {
        string?[] parts =
        [
            result.ImportedBefore is { } before
                ? string.Create(CultureInfo.InvariantCulture, $"The new boards of this table were imported before, on {before:yyyy-MM-dd}: none was logged again (--again does).")
                : null,
            result.Items.Count > 0 ? $"Logged {Boards(result.Items.Count)}. Write the ids on their end grain." : null,
            result.Changed is { Count: > 0 } changed ? $"Changed {Boards(changed.Count)}." : null,
            result.Unchanged > 0 ? $"{Boards(result.Unchanged)} {(result.Unchanged == 1 ? "is as the table has it" : "are as the table has them")}." : null,
        ];
        return parts.Any(part => part is not null) ? string.Join(" ", parts.OfType<string>()) : "The table has no boards.";
    }

    private static string Boards(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "board" : "boards")}");
}
